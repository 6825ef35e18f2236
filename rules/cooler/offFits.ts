import { HOUR, type Hours, MINUTE } from '../units.ts';
import { offPeriodFit } from './offPeriodFit.ts';
import { firstNotBefore, type Span, type Trace } from './trace.ts';

const LONGEST = 6 * HOUR; // the first hours are what a hold-over is asked about. Ours
const SLOWEST = 200; // h, ours: beyond it the fit says nothing
const FASTEST = 0.2; // h, ours: an open door, not a room

/** A time constant, and when the stop that taught it began. */
export type OffFit = { readonly at: Span['from']; readonly tauHours: Hours };

/**
 * Time constants from the stretches in which nothing cooled, door shut where a contact says so;
 * those that can't be learned from are left out.
 *
 * Source: offPeriodFit; which stretches are asked is ours.
 */
export function offFits(
  spans: readonly Span[],
  {
    air,
    outside,
    door,
  }: { readonly air: Trace; readonly outside: Trace; readonly door: Trace | null },
): OffFit[] {
  const between = ({ t, value }: Trace, from: number, to: number) => {
    const rows = [];
    for (let i = firstNotBefore(t, from); i < t.length && (t[i] as number) <= to; i++) {
      rows.push({ t: t[i] as Span['from'], value: value[i] as number });
    }
    return rows;
  };
  return spans.flatMap(({ from, to }) => {
    const end = Math.min(to, from + LONGEST);
    if (end - from < 30 * MINUTE) return [];
    if (door !== null && between(door, from, end).some(({ value }) => value > 0.5)) return [];
    const { tauHours } = offPeriodFit(
      between(air, from, end) as never,
      between(outside, from, end) as never,
    );
    return tauHours !== null && tauHours >= FASTEST && tauHours <= SLOWEST
      ? [{ at: from, tauHours }]
      : [];
  });
}
