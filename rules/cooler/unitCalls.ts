import { median, percentile } from '../statistics/index.ts';
import type { Instant } from '../units.ts';
import { firstNotBefore, type Trace } from './trace.ts';

/** How warm the air is when a unit begins to work and when it stops, °C; null for too few times. */
export type UnitCalls = { readonly startsAt: number; readonly stopsAt: number };

const FEWEST = 6; // starts of a day. Ours
const MOSTLY = 0.8; // of the starts: a door that lets it start early or late does not count

/**
 * Where in its cycle a unit starts and stops, by when it works and by the air then. Ours, from no
 * source.
 * @param works whether it works, reading by reading; null where that can't be said
 * @param air smoothed, so that a probe's noise is not taken for a start
 */
export function unitCalls(
  works: readonly { readonly t: Instant; readonly on: boolean | null }[],
  air: Trace,
): UnitCalls | null {
  const starts: number[] = [];
  const stops: number[] = [];
  let was: boolean | null = null;
  for (const { t, on } of works) {
    if (on === null) continue;
    if (was !== null && on !== was) {
      const value = air.value[firstNotBefore(air.t, t)];
      if (value !== undefined) (on ? starts : stops).push(value);
    }
    was = on;
  }
  if (starts.length < FEWEST || stops.length < FEWEST) return null;
  return { startsAt: percentile(starts, MOSTLY), stopsAt: median(stops) };
}
