import { expectRange } from '../expectRange.ts';
import { type BatchSpread, batchSpread } from './batchSpread.ts';

const LEAST_SPREAD = 0.03; // of the mean, as in batchSpread: common practice, no source
const FIRST_BATCHES = 3; // until then batchSpread's rule: the same
const UNIFORM = 12; // variance of a value anywhere in a stretch of length 1 is 1/12

/** Heat a past batch had when somebody found it ready, and how much of it the last day brought. */
export type FoundReady = { readonly degreeDays: number; readonly lastDay: number };

/**
 * Heat units at which the next batch will be found ready, from those of past batches.
 *
 * People see that a batch is ready on the day they look, so it became so at some time since they
 * looked the day before: on the average half a day's warmth earlier, off by that day's warmth over
 * √12 (any moment of the day alike: ours). Past batches are freed of their own last day, and the
 * next gets that of its own; with days as warm as theirs were it is batchSpread unchanged, but for a
 * hair.
 * @param perDay what a day brings about the time the next is ready, °C d
 * @throws RangeError as batchSpread, or for units of a day outside 0..60 °C d
 */
export function needOf(past: readonly FoundReady[], perDay: number): BatchSpread {
  const found = batchSpread(past.map(({ degreeDays }) => degreeDays));
  expectRange('units of a day', perDay, 0, 60, '°C d');
  for (const { lastDay } of past) expectRange('units of the last day', lastDay, 0, 60, '°C d');
  const { n, df } = found;
  const lastDay = past.reduce((sum, one) => sum + one.lastDay, 0) / n;
  const mean = Math.max(1, found.mean + (perDay - lastDay) / 2);
  if (n < FIRST_BATCHES) return { ...found, mean };
  const squares = past.reduce((sum, one) => sum + one.lastDay ** 2, 0) / n;
  const oneMore = 1 + 1 / n;
  const own = found.sd ** 2 / oneMore - squares / UNIFORM;
  const freed = Math.max(own, (LEAST_SPREAD * mean) ** 2);
  return { n, mean, df, sd: Math.sqrt(freed * oneMore + perDay ** 2 / UNIFORM) };
}
