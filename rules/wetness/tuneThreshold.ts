import { expectRange } from '../expectRange.ts';
import { HOUR, type Instant, instant } from '../units.ts';
import { wetPieces } from './wetPieces.ts';
import { type AirRead, signsByHumidity } from './wetSign.ts';

/** What the grower saw on the leaves, and when. */
export type LeafNote = { readonly t: Instant; readonly wet: boolean };

export type ThresholdTuning = {
  /** The threshold that agrees with most notes, %; null with fewer than 10 notes to go by. */
  readonly suggested: number | null;
  /** Notes with known humidity at every threshold; the others are left out. */
  readonly notes: number;
  readonly agreed: readonly { readonly at: number; readonly notes: number }[];
};

// All ours, from no source.
const LOWEST = 82; // %
const HIGHEST = 95; // %
const USUAL = 90; // %: ties go to it
const RELEASE = 3; // % under the threshold leaves get dry again, as 87 is to 90
const ENOUGH = 10; // notes
const LOOK_BACK = 48 * HOUR; // to know how leaves were before

/**
 * Which humidity threshold suits this place, by the grower's own notes "leaves wet" and "leaves
 * dry": for each from 82 to 95 % how many notes agree. Ties go to the one nearest 90, and of two as
 * near to the lower, which sees wetness sooner. It suggests; it never changes a rule.
 * @param readings canopy air in order of time
 * @throws RangeError as wetPieces
 */
export function tuneThreshold(
  notes: readonly LeafNote[],
  readings: readonly AirRead[],
  { maxGapMinutes = 30 }: { readonly maxGapMinutes?: number } = {},
): ThresholdTuning {
  expectRange('longest time between readings', maxGapMinutes, 1, 1440, 'min');
  const thresholds = Array.from({ length: HIGHEST - LOWEST + 1 }, (_, step) => LOWEST + step);
  const usable = notes
    .map(({ t, wet }) => ({
      wet,
      states: thresholds.map((at) => stateAt(readings, t, at, maxGapMinutes)),
    }))
    .filter(({ states }) => !states.includes('unknown'));
  const agreed = thresholds.map((at, index) => ({
    at,
    notes: usable.filter(({ wet, states }) => (states[index] === 'wet') === wet).length,
  }));
  const best = agreed.reduce((a, b) => (better(b, a) ? b : a));
  const enough = usable.length >= ENOUGH;
  return { suggested: enough ? best.at : null, notes: usable.length, agreed };
}

type Agreed = { readonly at: number; readonly notes: number };
const better = (a: Agreed, b: Agreed) =>
  a.notes > b.notes || (a.notes === b.notes && Math.abs(a.at - USUAL) < Math.abs(b.at - USUAL));

function stateAt(readings: readonly AirRead[], t: Instant, at: number, maxGapMinutes: number) {
  const near = readings.filter((each) => Math.abs(each.t - t) <= LOOK_BACK);
  const window = { from: instant(t - LOOK_BACK), to: instant(t + 1) };
  const signs = signsByHumidity(near, { at, below: at - RELEASE });
  return wetPieces(signs, window, { maxGapMinutes }).at(-1)?.state ?? 'unknown';
}
