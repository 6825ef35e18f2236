import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';
import { batchQuantile, batchSpread } from './batchSpread.ts';

const STANDING_WIDER = 1.5; // common practice, no source: under 10 h of day, light limits growth

/** A batch on its way. */
export type GrowingBatch = {
  /** Heat units of past batches of this crop, variety and place at this stage, °C d. */
  readonly pastDegreeDays: readonly number[];
  /** Of this batch up to now. */
  readonly soFar: number;
  /** What each coming day is expected to bring. */
  readonly perDay: number;
};

/**
 * Days until the next batch is ready: expected, and the ends of an interval that holds the truth
 * with the given confidence. 0 is "by now". null where no warmth is to come, so that it is never.
 *
 * The interval is that of one new batch, mean ± t(n - 1) s √(1 + 1/n) in heat units, over the
 * units each day brings. With one or two past batches it is wide by our rule. While salad only
 * stands (days under 10 h: isStanding) it is half as wide again, and no date should be promised.
 * "Ready on" is not "cut on": learn from the first.
 * @param confidence 0.5..0.99
 * @throws RangeError without past batches, for units outside 0..10,000, or perDay outside 0..60
 */
export const harvestWindow = orUnknownField(function harvestWindow(
  batch: GrowingBatch & {
    readonly confidence: number;
    readonly standing?: boolean | undefined;
  },
): {
  readonly early: number | null;
  readonly expected: number | null;
  readonly late: number | null;
} {
  const { pastDegreeDays, soFar, perDay, confidence, standing = false } = batch;
  const spread = batchSpread(pastDegreeDays);
  expectGrowing(batch);
  expectRange('confidence', confidence, 0.5, 0.99, '');

  const wider = standing ? STANDING_WIDER : 1;
  const half = batchQuantile(spread, (1 + confidence) / 2) * spread.sd * wider;
  const daysTo = (units: number) => {
    if (units <= soFar) return 0;
    return perDay === 0 ? null : (units - soFar) / perDay;
  };
  return {
    early: daysTo(spread.mean - half),
    expected: daysTo(spread.mean),
    late: daysTo(spread.mean + half),
  };
});

export function expectGrowing({ soFar, perDay }: GrowingBatch) {
  expectRange('units so far', soFar, 0, 10_000, '°C d');
  expectRange('units per day', perDay, 0, 60, '°C d');
}
