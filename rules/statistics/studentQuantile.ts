import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { studentCdf } from './studentCdf.ts';

const MOST_STEPS = 200; // bisection alone would be done in fewer

/**
 * The value that a Student t variable with `df` degrees of freedom stays below with chance `p`.
 * `df` may be Infinity: the normal quantile.
 *
 * Inverts studentCdf: the upper tail is bracketed by doubling, then closed by regula falsi with
 * bisection whenever that does not at least halve the bracket.
 * @throws RangeError unless 0 < p < 1 and df is at least 0.1
 */
export const studentQuantile = orUnknown(function studentQuantile(p: number, df: number): number {
  if (!(p > 0 && p < 1)) {
    throw new RangeError(`Expected probability from above 0 to below 1, got ${p}`);
  }
  expectRange('degrees of freedom', df, 0.1, Number.POSITIVE_INFINITY, '');
  if (p === 0.5) return 0;
  // The lower tail keeps its digits where 1 - p would lose them, so everything is done there.
  if (p > 0.5) return -lowerQuantile(1 - p, df);
  return lowerQuantile(p, df);
});

function lowerQuantile(p: number, df: number): number {
  let high = 0;
  let low = -1;
  while (studentCdf(low, df) > p) {
    high = low;
    low *= 2;
  }
  let atLow = studentCdf(low, df) - p;
  let atHigh = studentCdf(high, df) - p;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const width = high - low;
    if (width <= 1e-14 * Math.max(1, Math.abs(low))) break;
    const chord = low - (atLow * width) / (atHigh - atLow);
    const guess = step % 2 === 0 && chord > low && chord < high ? chord : (low + high) / 2;
    const value = studentCdf(guess, df) - p;
    if (value === 0) return guess;
    if (value < 0) {
      low = guess;
      atLow = value;
    } else {
      high = guess;
      atHigh = value;
    }
  }
  return (low + high) / 2;
}
