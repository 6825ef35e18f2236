import { expectRange } from '../expectRange.ts';
import { expectNumbers } from './expectNumbers.ts';
import { meanOf } from './meanOf.ts';
import { studentQuantile } from './studentQuantile.ts';

/** A mean; low and high are null below three values, which tell nothing of their spread. */
export type MeanInterval = {
  readonly n: number;
  readonly mean: number;
  readonly low: number | null;
  readonly high: number | null;
};

const FEWEST = 3; // ours

/**
 * Mean of values with its interval, mean ± t(n - 1) s / √n; null for none.
 *
 * Source: the t interval, Student 1908 (from memory).
 * @param confidence 0.5..0.99
 * @throws RangeError for a value that is no number, or the confidence
 */
export function meanInterval(values: readonly number[], confidence: number): MeanInterval | null {
  expectRange('confidence', confidence, 0.5, 0.99, '');
  expectNumbers('value', values);
  const n = values.length;
  if (n === 0) return null;
  const mean = meanOf(values);
  if (n < FEWEST) return { n, mean, low: null, high: null };
  const sd = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (n - 1));
  const half = (studentQuantile((1 + confidence) / 2, n - 1) * sd) / Math.sqrt(n);
  return { n, mean, low: mean - half, high: mean + half };
}
