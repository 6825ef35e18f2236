import { expectRange } from '../expectRange.ts';
import { expectNumbers } from './expectNumbers.ts';
import { studentQuantile } from './studentQuantile.ts';

/** One unit of the sample: what came of it, and what it took. */
export type RatioPair = { readonly got: number; readonly took: number };

/** A ratio of sums and the interval it lies in. */
export type RatioInterval = {
  readonly n: number;
  /** Sum of what came over sum of what it took: never the mean of ratios. */
  readonly ratio: number;
  /** null from fewer than three pairs: one may say anything. */
  readonly low: number | null;
  readonly high: number | null;
};

const FEWEST = 3; // ours: with two pairs t(1) is 12.7, which says nothing

/**
 * What one unit of effort brings, from pairs of yield and effort that differ in size: the ratio of
 * the sums, and its interval by linearised variance, n Σ(y - r x)² / ((n - 1) (Σx)²), with Student's
 * t on n - 1. null where nothing was put in.
 *
 * Rough below about ten pairs, and too narrow when the effort varies much: say "about".
 * Source: Cochran, Sampling Techniques, 3rd ed. 1977, section 2.11 and 6.4 (from memory); without
 * its finite population factor, as the batches still to come are many.
 * @param confidence 0.5..0.99
 * @throws RangeError for an effort below 0, a yield that is no number, or the confidence
 */
export function ratioInterval(
  pairs: readonly RatioPair[],
  confidence: number,
): RatioInterval | null {
  expectRange('confidence', confidence, 0.5, 0.99, '');
  for (const { took } of pairs) expectRange('effort', took, 0, Number.MAX_VALUE, '');
  expectNumbers(
    'yield',
    pairs.map(({ got }) => got),
  );
  const n = pairs.length;
  const took = pairs.reduce((sum, pair) => sum + pair.took, 0);
  if (took === 0) return null;
  const ratio = pairs.reduce((sum, pair) => sum + pair.got, 0) / took;
  if (n < FEWEST) return { n, ratio, low: null, high: null };
  const squares = pairs.reduce((sum, pair) => sum + (pair.got - ratio * pair.took) ** 2, 0);
  const error = Math.sqrt((n * squares) / (n - 1)) / took;
  const half = studentQuantile((1 + confidence) / 2, n - 1) * error;
  return { n, ratio, low: ratio - half, high: ratio + half };
}
