import { expectRange } from '../expectRange.ts';
import { studentQuantile } from '../statistics/index.ts';

// Until three batches show a spread of their own (ours, from no source).
const FIRST_BATCHES_SPREAD = 0.12; // of the mean
const FIRST_BATCHES_T = 2;
// However alike a few batches were, the next will not be nearer than this (ours).
const LEAST_SPREAD = 0.03; // of the mean

/**
 * Days until the next batch is ready: expected, and the ends of an interval that holds the truth
 * with the given confidence. 0 is "by now". null where no warmth is to come, so that it is never.
 *
 * The interval is that of one new batch, mean ± t(n - 1) s sqrt(1 + 1/n) in heat units, over the
 * units each day brings. With one or two past batches it is wide by our rule.
 * @param pastDegreeDays heat units of past batches of this crop, at this stage, °C d
 * @param soFar heat units of this batch up to now
 * @param perDay heat units each coming day is expected to bring
 * @param confidence 0.5..0.99
 * @throws RangeError without past batches, for units outside 0..10,000, or perDay outside 0..60
 */
export function harvestWindow(batch: {
  readonly pastDegreeDays: readonly number[];
  readonly soFar: number;
  readonly perDay: number;
  readonly confidence: number;
}): {
  readonly early: number | null;
  readonly expected: number | null;
  readonly late: number | null;
} {
  const { pastDegreeDays, soFar, perDay, confidence } = batch;
  const n = pastDegreeDays.length;
  expectRange('number of past batches', n, 1, 10_000, '');
  for (const units of pastDegreeDays) expectRange('units of a batch', units, 1, 10_000, '°C d');
  expectRange('units so far', soFar, 0, 10_000, '°C d');
  expectRange('units per day', perDay, 0, 60, '°C d');
  expectRange('confidence', confidence, 0.5, 0.99, '');

  const mean = pastDegreeDays.reduce((sum, units) => sum + units, 0) / n;
  const half = halfWidth(pastDegreeDays, mean, confidence);
  const daysTo = (units: number) => {
    if (units <= soFar) return 0;
    return perDay === 0 ? null : (units - soFar) / perDay;
  };
  return { early: daysTo(mean - half), expected: daysTo(mean), late: daysTo(mean + half) };
}

function halfWidth(past: readonly number[], mean: number, confidence: number): number {
  const n = past.length;
  const oneMore = Math.sqrt(1 + 1 / n);
  if (n < 3) return FIRST_BATCHES_T * FIRST_BATCHES_SPREAD * mean * oneMore;
  const squares = past.reduce((sum, units) => sum + (units - mean) ** 2, 0);
  const spread = Math.max(Math.sqrt(squares / (n - 1)), LEAST_SPREAD * mean);
  return studentQuantile((1 + confidence) / 2, n - 1) * spread * oneMore;
}
