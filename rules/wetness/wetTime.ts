import { HOUR, type Hours, hours, type Instant } from '../units.ts';
import { walkWetness } from './walkWetness.ts';
import type { WetReading, WetRule } from './wetRule.ts';

/**
 * Hours known to be wet, and hours not known, between two instants. Readings from before the
 * window may be given: they tell whether leaves were wet when it began. Time that no reading
 * speaks for, at its ends too, is unknown; it is never dry.
 * @throws RangeError as walkWetness, or for a window that ends before it begins
 */
export function wetTime(
  readings: readonly WetReading[],
  rule: WetRule,
  window: { readonly from: Instant; readonly to: Instant },
): { readonly wetHours: Hours; readonly unknownHours: Hours } {
  const { from: begins, to: ends } = window;
  if (!(ends >= begins)) {
    throw new RangeError(`Expected a window to end from ${begins} onwards, got ${ends}`);
  }
  let wet = 0;
  let known = 0;
  walkWetness(readings, rule, (state, from, to) => {
    if (state === 'unknown') return;
    const inside = Math.min(to, ends) - Math.max(from, begins);
    if (inside <= 0) return;
    known += inside;
    if (state === 'wet') wet += inside;
  });
  return { wetHours: hours(wet / HOUR), unknownHours: hours((ends - begins - known) / HOUR) };
}
