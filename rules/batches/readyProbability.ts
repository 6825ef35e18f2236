import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { studentCdf } from '../statistics/index.ts';
import type { Probability } from '../units.ts';
import { batchSpread } from './batchSpread.ts';

/**
 * Chance that a batch is ready when its heat units reach `units`: t distribution of one new batch
 * around the past ones. null with one or two past batches, whose spread nobody knows.
 * @throws RangeError without past batches, or for units outside 0..10,000 °C d
 */
export const readyProbability = orUnknown(function readyProbability(
  pastDegreeDays: readonly number[],
  units: number,
): Probability | null {
  const { mean, sd, df } = batchSpread(pastDegreeDays);
  expectRange('units of the batch', units, 0, 10_000, '°C d');
  return df === null ? null : studentCdf((units - mean) / sd, df);
});
