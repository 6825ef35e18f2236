import { expectRange } from '../expectRange.ts';
import { studentQuantile } from '../statistics/index.ts';

// Until three batches show a spread of their own: common practice, no source.
const FIRST_BATCHES_SPREAD = 0.12; // of the mean
const FIRST_BATCHES_T = 2;
const FIRST_BATCHES = 3;
// However alike a few batches were, the next will not be nearer than this: the same.
const LEAST_SPREAD = 0.03; // of the mean

/** What past batches say of the next one's heat units. */
export type BatchSpread = {
  readonly n: number;
  /** °C d. */
  readonly mean: number;
  /** Standard deviation of one new batch: the batches' own, widened by √(1 + 1/n). */
  readonly sd: number;
  /** n - 1; null for the first batches, of which no chance can be told. */
  readonly df: number | null;
};

/**
 * Mean and spread of past batches of one crop, variety, place and stage. With one or two of them
 * the spread is 12 % of the mean; later never less than 3 %.
 * @throws RangeError without past batches, or for units outside 1..10,000 °C d
 */
export function batchSpread(pastDegreeDays: readonly number[]): BatchSpread {
  const n = pastDegreeDays.length;
  expectRange('number of past batches', n, 1, 10_000, '');
  for (const units of pastDegreeDays) expectRange('units of a batch', units, 1, 10_000, '°C d');
  const mean = pastDegreeDays.reduce((sum, units) => sum + units, 0) / n;
  const oneMore = Math.sqrt(1 + 1 / n);
  if (n < FIRST_BATCHES) return { n, mean, sd: FIRST_BATCHES_SPREAD * mean * oneMore, df: null };
  const squares = pastDegreeDays.reduce((sum, units) => sum + (units - mean) ** 2, 0);
  const sd = Math.max(Math.sqrt(squares / (n - 1)), LEAST_SPREAD * mean);
  return { n, mean, sd: sd * oneMore, df: n - 1 };
}

/**
 * How many standard deviations one new batch stays below with chance `p` (0..1): Student's t; for
 * the first batches 2 either way, whatever is asked.
 */
export function batchQuantile({ df }: BatchSpread, p: number): number {
  if (df !== null) return studentQuantile(p, df);
  return Math.sign(p - 0.5) * FIRST_BATCHES_T;
}
