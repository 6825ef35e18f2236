import { expectRange } from '../expectRange.ts';
import { daysApartInYear } from '../heat/index.ts';
import { FEWEST_FORECASTS, studentQuantile, wilson } from '../statistics/index.ts';
import { type Probability, probability } from '../units.ts';

/** One forecast as it was issued, and what the night came to. */
export type ScoredForecast = {
  readonly night: string;
  readonly low: { readonly mean: number; readonly sd: number; readonly df: number };
  /** Chance stated of going below `at`. */
  readonly p: number;
  readonly at: number;
  readonly came: number;
  /** Low of the night before; null where a gap hides it. */
  readonly before: number | null;
  /** How often it went below `at` at this time of the year, by the nights before this one. */
  readonly baseRate: number;
};

/** What followed chances from `from` up to below `to` (or 1). */
export type ChanceBand = {
  readonly from: number;
  readonly to: number;
  readonly n: number;
  readonly happened: number;
  /** Interval of the true share, 95 % (Wilson 1927); null without a forecast. */
  readonly between: readonly [low: Probability, high: Probability] | null;
};

export type ForecastScores = {
  readonly n: number;
  /** Nights that went below. */
  readonly happened: number;
  /** Mean of forecast less what came, and of its size, K. */
  readonly bias: number;
  readonly error: number;
  /** The same size of error of last night's low again, on the nights that have one, K. */
  readonly persistenceError: number | null;
  /** Nights whose low lay in the 80 % interval. */
  readonly inside: number;
  readonly brier: number;
  /** Below twenty forecasts only the list and the mean score may be shown. */
  readonly enough: boolean;
  /** Skill against the base rate known beforehand, and against "as last night"; null where undefined. */
  readonly skill: { readonly climatology: number | null; readonly persistence: number | null };
  readonly bands: readonly ChanceBand[];
};

const BAND_EDGES = [0, 0.1, 0.3, 0.7, 0.9, 1]; // ours: few, so that each fills
const OUTER = 0.9; // of Student's t: 80 % lie between its tenth and its ninetieth percentile

/**
 * How good forecasts of the night were, each as it was issued.
 *
 * Source: Brier 1950, Mon. Wea. Rev. 78:1; skill 1 - Brier / Brier of the reference (Murphy 1973,
 * from memory). References: the base rate known before each night, and last night's outcome again.
 * @returns null without any forecast
 * @throws RangeError for a probability outside 0..1
 */
export function forecastScores(nights: readonly ScoredForecast[]): ForecastScores | null {
  const n = nights.length;
  if (n === 0) return null;
  for (const { p } of nights) expectRange('probability', p, 0, 1, '');
  const mean = (value: (night: ScoredForecast) => number, of = nights) =>
    of.reduce((sum, night) => sum + value(night), 0) / of.length;
  const outcome = ({ came, at }: ScoredForecast) => Number(came < at);
  const brierOf = (chance: (night: ScoredForecast) => number, of = nights) =>
    mean((night) => (chance(night) - outcome(night)) ** 2, of);
  const followed = nights.filter(({ before }) => before !== null);
  const asBefore = ({ before, at }: ScoredForecast) => Number((before ?? at) < at);
  const skillOf = (reference: (night: ScoredForecast) => number, of: readonly ScoredForecast[]) => {
    const theirs = of.length === 0 ? 0 : brierOf(reference, of);
    return theirs === 0 ? null : 1 - brierOf(({ p }) => p, of) / theirs;
  };
  const inside = ({ low, came }: ScoredForecast) =>
    Math.abs(came - low.mean) <= studentQuantile(OUTER, low.df) * low.sd;
  return {
    n,
    happened: nights.filter((night) => outcome(night) === 1).length,
    bias: mean(({ low, came }) => low.mean - came),
    error: mean(({ low, came }) => Math.abs(low.mean - came)),
    persistenceError:
      followed.length === 0
        ? null
        : mean(({ before, came }) => Math.abs((before ?? came) - came), followed),
    inside: nights.filter(inside).length,
    brier: brierOf(({ p }) => p),
    enough: n >= FEWEST_FORECASTS,
    skill: {
      climatology: skillOf(({ baseRate }) => baseRate, nights),
      persistence: skillOf(asBefore, followed),
    },
    bands: BAND_EDGES.slice(0, -1).map((from, i) => bandOf(nights, from, BAND_EDGES[i + 1] ?? 1)),
  };
}

/** What followed chances of `from` and more, below `to`; the last band holds 1 as well. */
export function bandOf(
  nights: readonly Pick<ScoredForecast, 'p' | 'came' | 'at'>[],
  from: number,
  to: number,
): ChanceBand {
  const inBand = nights.filter(({ p }) => p >= from && (p < to || to === 1));
  const happened = inBand.filter(({ came, at }) => came < at).length;
  const between = inBand.length === 0 ? null : wilson(happened, inBand.length);
  return { from, to, n: inBand.length, happened, between };
}

const WINDOW = 30; // days of the year on either side; common practice, no source

/**
 * How often nights went below `at` in the thirty days of the year around `on`, by the nights
 * before it only: this year's last month, and the same weeks of older years. Half an event is
 * added to those seen and one night to the nights, so that it is never quite 0 or 1.
 * @throws RangeError for what is no calendar day
 */
export function baseRateBefore(
  nights: readonly { readonly night: string; readonly low: number | null }[],
  at: number,
  on: string,
): Probability {
  let known = 0;
  let below = 0;
  for (const { night, low } of nights) {
    if (low === null || night >= on || daysApartInYear(night, on) > WINDOW) continue;
    known += 1;
    if (low < at) below += 1;
  }
  return probability((below + 0.5) / (known + 1));
}
