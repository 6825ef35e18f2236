import { expectRange } from '../expectRange.ts';
import { studentCdf, studentQuantile } from '../statistics/index.ts';
import { type Probability, probability } from '../units.ts';
import { weibullQuantile } from './weibullQuantile.ts';

const ENOUGH_FOR_A_CURVE = 15; // seasons; common practice, no source
const ENOUGH_TO_COUNT = 8; // seasons; the same

/** Frost dates as a t distribution (normal when `df` is Infinity), in season days. */
export type FrostDateCurve = { readonly mean: number; readonly sd: number; readonly df: number };

/** Mean and standard deviation (n - 1) of past frost dates, and how many. null for fewer than 2. */
export function firstFrostFit(
  dates: readonly number[],
): { readonly mean: number; readonly sd: number; readonly n: number } | null {
  for (const date of dates) expectRange('season day of frost', date, 0, 366, '');
  const n = dates.length;
  if (n < 2) return null;
  const mean = dates.reduce((sum, date) => sum + date, 0) / n;
  const squares = dates.reduce((sum, date) => sum + (date - mean) ** 2, 0);
  return { mean, sd: Math.sqrt(squares / (n - 1)), n };
}

/**
 * The distribution of one new season's date: predictive t (its spread widened by √(1 + 1/n),
 * n - 1 degrees of freedom), or the plain normal, which is overconfident late in the season.
 *
 * Source: Snyder & de Melo-Abreu 2005, FAO vol. 2, ch. 1, after Haan 1979, for probabilities of
 * frost dates; the normal form from memory.
 */
export function frostDateCurve(
  fit: { readonly mean: number; readonly sd: number; readonly n: number },
  form: 'predictive' | 'normal' = 'predictive',
): FrostDateCurve {
  const { mean, sd, n } = fit;
  if (form === 'normal') return { mean, sd, df: Number.POSITIVE_INFINITY };
  expectRange('number of seasons', n, 2, 10_000, '');
  return { mean, sd: sd * Math.sqrt(1 + 1 / n), df: n - 1 };
}

/**
 * Chance that a season's frost has come before `day`, when only `share` of seasons have one.
 * @throws RangeError for no spread, a share outside 0..1, or a day outside 0..366
 */
export function frostBefore(curve: FrostDateCurve, day: number, share = 1): Probability {
  expectRange('spread of frost dates', curve.sd, Number.MIN_VALUE, 366, 'd');
  expectRange('season day', day, 0, 366, '');
  expectRange('share of seasons', share, 0, 1, '');
  return probability(share * studentCdf((day - curve.mean) / curve.sd, curve.df));
}

/**
 * The season day before which the frost has come with chance `p`. By how many seasons there are:
 * predictive t from 15 on, Weibull plotting positions from 8 to 14; null for fewer (then a
 * neighbouring station with an offset: siteFromStation), for a chance no date reaches because some
 * seasons have none, or beyond what counting can say.
 * @param dates season days of past frosts
 * @param how `share` of seasons with frost (1); `form` to insist on one way
 * @throws RangeError for p not above 0 and below 1, or a share outside 0..1
 */
export function frostDateQuantile(
  dates: readonly number[],
  p: number,
  how: {
    readonly share?: number | undefined;
    readonly form?: 'predictive' | 'normal' | 'weibull' | undefined;
  } = {},
): number | null {
  const { share = 1 } = how;
  expectRange('share of seasons', share, 0, 1, '');
  if (!(p > 0 && p < 1)) {
    throw new RangeError(`Expected probability from above 0 to below 1, got ${p}`);
  }
  const fit = firstFrostFit(dates);
  if (fit === null || p >= share || (how.form === undefined && fit.n < ENOUGH_TO_COUNT))
    return null;
  const form = how.form ?? (fit.n < ENOUGH_FOR_A_CURVE ? 'weibull' : 'predictive');
  if (form === 'weibull') return weibullQuantile(dates, p / share);
  const { mean, sd, df } = frostDateCurve(fit, form);
  return mean + studentQuantile(p / share, df) * sd;
}
