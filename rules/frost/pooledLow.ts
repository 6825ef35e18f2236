import { expectRange } from '../expectRange.ts';

// How far somebody else's forecast is believed beside one's own, by its record here.

/** A forecast of somebody else, for a night that is over: what it said, and what came. */
export type SaidNight = { readonly said: number; readonly low: number };
export type Spread = { readonly mean: number; readonly sd: number; readonly df: number };

/** What a source has been worth at one spot. null: too few nights to tell. */
export type SourceRecord = {
  /** Nights it was held against. */
  readonly nights: number;
  /** What has to be added to what it says, K. */
  readonly correction: number;
  /** Root mean square error of each night after correction by the nights before it, K. */
  readonly error: number | null;
};

// All ours, from no source.
const TOWARDS_NONE = 3; // nights without any bias that are counted in, so that one night is no rule
const FEWEST = 10; // nights before it has any say, as for one's own regression
const HALF_BELIEVED = 20; // nights at which its say has grown to half of what its error earns

/**
 * The record of a source: its mean error so far, and how far off it was each night when corrected
 * by the nights before that one only, as it would have been used. Oldest night first.
 *
 * Source: ours; scoring forward in time is what keeps a record honest.
 */
export function sourceRecord(nights: readonly SaidNight[]): SourceRecord {
  let sum = 0;
  let squares = 0;
  for (const [i, { said, low }] of nights.entries()) {
    expectRange('forecast low', said, -100, 100, '°C');
    expectRange('low of the night', low, -100, 100, '°C');
    const correction = sum / (i + TOWARDS_NONE);
    squares += (low - said - correction) ** 2;
    sum += low - said;
  }
  const n = nights.length;
  return {
    nights: n,
    correction: sum / (n + TOWARDS_NONE),
    error: n < FEWEST ? null : Math.sqrt(squares / n),
  };
}

/**
 * The say of a source beside one's own forecast, 0 to 1: none until ten nights are known, and none
 * while its error is not the smaller one; then by the inverse of the squared errors, shrunk by the
 * number of nights, so that it grows as the record does.
 *
 * Source: inverse-variance weights, textbook; the shrinkage and the ten nights are ours.
 * @param ownError error of one's own forecast, each night predicted from the others, K
 * @throws RangeError for a negative error
 */
export function sourceWeight(record: SourceRecord, ownError: number): number {
  expectRange('own error', ownError, 0, 100, 'K');
  const { error, nights } = record;
  if (error === null || error >= ownError) return 0;
  const grown = nights / (nights + HALF_BELIEVED);
  return (grown * ownError ** 2) / (ownError ** 2 + error ** 2);
}

/**
 * Two forecasts as one: their weighted mean, with the most its error can spread. Whether the two
 * err together is not known here, so nothing is taken off for errors that cancel.
 *
 * Source: standard deviation of a weighted sum, at most the weighted sum of the deviations
 * (textbook); that the fewer degrees of freedom are kept is ours.
 * @throws RangeError for a weight outside 0..1
 */
export function pooledLow(own: Spread, other: Spread, weight: number): Spread {
  expectRange('weight', weight, 0, 1, '');
  if (weight === 0) return own;
  return {
    mean: (1 - weight) * own.mean + weight * other.mean,
    sd: (1 - weight) * own.sd + weight * other.sd,
    df: Math.min(own.df, other.df),
  };
}
