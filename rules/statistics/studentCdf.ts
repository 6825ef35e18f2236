import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { type Probability, probability } from '../units.ts';
import { incompleteBeta } from './incompleteBeta.ts';
import { normalCdf } from './normalCdf.ts';

// From here on the two distributions agree to seven decimals, and the fraction grows slow.
const AS_GOOD_AS_NORMAL = 1e6; // ours

/**
 * Chance that a Student t value with `df` degrees of freedom falls below `x`; `df` may be
 * Infinity, which is the normal distribution.
 *
 * Source: DLMF 8.17 through I_x(df/2, 1/2), x = df / (df + t^2); Abramowitz & Stegun 26.7.1.
 * @throws RangeError when df is not from 0.1 upwards or x is not a number
 */
export const studentCdf = orUnknown(function studentCdf(x: number, df: number): Probability {
  expectRange('degrees of freedom', df, 0.1, Number.POSITIVE_INFINITY, '');
  expectRange('t', x, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, '');
  if (df >= AS_GOOD_AS_NORMAL) return normalCdf(x);
  if (x === 0) return probability(0.5);
  const square = x * x;
  // Close to zero the share df / (df + t^2) rounds to 1, so the small share is used instead.
  const tail =
    square < df
      ? 0.5 * (1 - incompleteBeta(square / (df + square), 0.5, df / 2))
      : 0.5 * incompleteBeta(df / (df + square), df / 2, 0.5);
  return probability(x < 0 ? tail : 1 - tail);
});
