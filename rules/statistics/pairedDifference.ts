import { expectRange } from '../expectRange.ts';
import { autocorrelation, effectiveSampleSize } from './autocorrelation.ts';
import { expectNumbers } from './expectNumbers.ts';
import { meanOf } from './meanOf.ts';
import { studentQuantile } from './studentQuantile.ts';

/** How two things that were measured together differ on average. */
export type PairedDifference = {
  readonly n: number;
  /** What the n days are worth, as days in a row are alike. */
  readonly worth: number;
  readonly mean: number;
  readonly low: number;
  readonly high: number;
};

const FEWEST = 5; // ours, as for hours in a band
const FEWEST_WORTH = 3; // independent days; ours

/**
 * Mean of paired differences with its interval: mean ± t(m - 1) s / √m, where m is what the n days
 * in a row are worth given how alike neighbours are. null below five pairs, or when they are worth
 * fewer than three.
 *
 * Source: the paired t interval (Student 1908); m = n (1 - φ) / (1 + φ), Bayley & Hammersley 1946
 * (from memory). A φ below 0 is taken as 0: alternation is no reason to be surer.
 * @param differences in order of time
 * @param confidence 0.5..0.99
 * @throws RangeError for a difference that is no number, or the confidence
 */
export function pairedDifference(
  differences: readonly number[],
  confidence: number,
): PairedDifference | null {
  expectRange('confidence', confidence, 0.5, 0.99, '');
  expectNumbers('difference', differences);
  const n = differences.length;
  if (n < FEWEST) return null;
  const mean = meanOf(differences);
  const phi = Math.min(0.999, Math.max(0, autocorrelation(differences) ?? 0));
  const worth = effectiveSampleSize(n, phi);
  if (worth < FEWEST_WORTH) return null;
  const sd = Math.sqrt(differences.reduce((sum, d) => sum + (d - mean) ** 2, 0) / (n - 1));
  const half = (studentQuantile((1 + confidence) / 2, worth - 1) * sd) / Math.sqrt(worth);
  return { n, worth, mean, low: mean - half, high: mean + half };
}
