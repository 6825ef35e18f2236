import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { type Probability, probability } from '../units.ts';
import { expectCount } from './expectCount.ts';
import { studentQuantile } from './studentQuantile.ts';

/**
 * Interval that the true share lies in, after `successes` out of `n`.
 *
 * Source: Wilson 1927, J. Am. Stat. Assoc. 22:209, score interval without continuity correction.
 * @param confidence share of such intervals that hold the truth, 0.5..0.9999
 * @throws RangeError for n = 0 (there is no interval), or successes not from 0 to n
 */
export const wilson = orUnknown(function wilson(
  successes: number,
  n: number,
  confidence: number = 0.95,
): readonly [low: Probability, high: Probability] {
  expectCount('trials', n, 1);
  expectCount('successes', successes, 0, n);
  expectRange('confidence', confidence, 0.5, 0.9999, '');
  const z = studentQuantile((1 + confidence) / 2, Number.POSITIVE_INFINITY);
  const share = successes / n;
  const middle = share + (z * z) / (2 * n);
  const half = z * Math.sqrt((share * (1 - share)) / n + (z * z) / (4 * n * n));
  const scale = 1 + (z * z) / n;
  // Exactly 0 and 1 at the ends, where rounding would leave a hair.
  const low = successes === 0 ? 0 : (middle - half) / scale;
  const high = successes === n ? 1 : (middle + half) / scale;
  return [probability(low), probability(high)];
});
