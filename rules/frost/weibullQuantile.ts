import { expectRange } from '../expectRange.ts';

/**
 * Quantile of a sample by the Weibull plotting position p = k / (n + 1), straight between the
 * order statistics. null ("not enough years") outside 1/(n+1) .. n/(n+1): it does not extrapolate.
 *
 * Source: Weibull 1939; type 6 of Hyndman & Fan 1996, Am. Stat. 50:361.
 * @throws RangeError for p outside 0..1, or a value that is no number
 */
export function weibullQuantile(values: readonly number[], p: number): number | null {
  expectRange('probability', p, 0, 1, '');
  for (const value of values) expectRange('value', value, -Number.MAX_VALUE, Number.MAX_VALUE, '');
  const sorted = [...values].sort((a, b) => a - b);
  const position = p * (sorted.length + 1);
  // 0.1 x 10 may come out a hair off 1: that is still the first order statistic.
  const whole = Math.round(position);
  const exact = Math.abs(position - whole) < 1e-9;
  const below = exact ? whole : Math.floor(position);
  const lower = sorted[below - 1];
  if (lower === undefined) return null;
  if (exact) return lower;
  const upper = sorted[below];
  return upper === undefined ? null : lower + (position - below) * (upper - lower);
}
