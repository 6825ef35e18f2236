import { meanOf } from '../statistics/index.ts';
import { HOUR, type Hours, hours, MINUTE } from '../units.ts';
import { offPeriodFit } from './offPeriodFit.ts';
import { firstNotBefore, type Span, type Trace } from './trace.ts';

const LONGEST = 6 * HOUR; // the first hours are what a hold-over is asked about. Ours
const SLOWEST = 200; // h, ours: beyond it the fit says nothing
const FASTEST = 0.2; // h, ours: an open door, not a room

type Reading = { readonly t: number; readonly value: number };

/** A time constant, and when the stop that taught it began. */
export type OffFit = {
  readonly at: Span['from'];
  readonly tauHours: Hours;
  /**
   * The constant by which the air would have come as far in the first hour as it did, its quick
   * beginning included: the air first catches up with walls and crates. null where it is not known.
   */
  readonly swiftHours: Hours | null;
};

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
    const inside = between(air, from, end);
    const out = between(outside, from, end);
    const { tauHours } = offPeriodFit(inside as never, out as never);
    return tauHours !== null && tauHours >= FASTEST && tauHours <= SLOWEST
      ? [{ at: from, tauHours, swiftHours: swift(inside, out) }]
      : [];
  });
}

const FIRST = { from: 50, to: 70 }; // minutes after the beginning. Ours

function swift(air: readonly Reading[], outside: readonly Reading[]): Hours | null {
  const first = air[0];
  const after = (t: number) => (first === undefined ? 0 : (t - first.t) / MINUTE);
  const later = air.find(({ t }) => after(t) >= FIRST.from && after(t) <= FIRST.to);
  if (first === undefined || later === undefined || outside.length === 0) return null;
  const out = meanOf(outside.map(({ value }) => value));
  if (!(later.value > first.value) || later.value >= out) return null;
  const ratio = (out - first.value) / (out - later.value);
  return hours((later.t - first.t) / HOUR / Math.log(ratio));
}
