import { expectRange } from '../expectRange.ts';
import { ratioInterval } from '../statistics/index.ts';

const CONFIDENCE = 0.8; // ours, as in worthItsHours
const FEWEST = 4; // pickings, as in pickOn; ours
const LATELY = 8; // the newest pickings, as in pickOn; ours

/** One picking as it was written down, in order of time. */
export type PickedKilograms = {
  /** Picked, sorted out or not, kg. */
  readonly kilograms: number;
  /** All hands, the walk among them. */
  readonly minutes: number;
  /** Of those, what any picking costs, whatever it yields: the walk, the weighing. */
  readonly walk: number;
};

export type PickingSpeed = {
  readonly minutesPerKilogram: number;
  readonly low: number;
  readonly high: number;
  readonly pickings: number;
};

/**
 * Minutes that a kilogram takes to pick, from the newest pickings: their minutes less the walk, over
 * their kilograms, summed before they are divided. null from fewer than four pickings, or where
 * nothing was picked.
 *
 * Source: the interval is that of a ratio of sums (ratioInterval); the rule is ours.
 * @throws RangeError for weights below 0, minutes outside 0..100,000, or a walk longer than all of it
 */
export function pickingSpeed(
  pickings: readonly PickedKilograms[],
  confidence: number = CONFIDENCE,
): PickingSpeed | null {
  for (const { kilograms, minutes, walk } of pickings) {
    expectRange('picked weight', kilograms, 0, 1_000_000, 'kg');
    expectRange('minutes of a picking', minutes, 0, 100_000, 'min');
    expectRange('walk', walk, 0, minutes, 'min');
  }
  if (pickings.length < FEWEST) return null;
  const newest = pickings.slice(-LATELY);
  const found = ratioInterval(
    newest.map(({ kilograms, minutes, walk }) => ({ got: minutes - walk, took: kilograms })),
    confidence,
  );
  if (found === null || found.low === null || found.high === null) return null;
  return {
    minutesPerKilogram: found.ratio,
    low: Math.max(0, found.low),
    high: found.high,
    pickings: found.n,
  };
}
