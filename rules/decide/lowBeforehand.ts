import type { Clues } from './clues.ts';
import { lowByMorning } from './lowByMorning.ts';
import { type Kind, regression } from './lowByRegression.ts';
import type { NightForecast, NightRecord, Predictor, SpotPrior } from './snapshot.ts';

// What this night's low is expected to be, from past nights and one reading, before what the
// night itself has shown so far is taken in.

export type Low = { readonly mean: number; readonly sd: number; readonly df: number };
export type Beforehand = {
  readonly low: Low;
  readonly method: NightForecast['method'];
  readonly nightsLearned: number;
  /** How far off it has been, each night predicted from the others, K; where nobody can say, its spread. */
  readonly error: number;
};

// Ours, from no source: under five nights a spread says nothing; after two weeks weather is another.
const FEWEST_NIGHTS = 5;
const MOST_NIGHTS = 14;
// Ours, from no source: last nights are no fair draw for the next, so their spread is widened.
const WIDENED = 1.3;
const LEAST_SPREAD = 0.5; // K, ours: two quiet weeks do not make the next night certain
// Ours, from no source; wide on purpose, for a farm whose first nights are not over yet.
const DROP_FROM_WARMEST = 9; // K
const DROP_FROM_EVENING = 5; // K
const WIDE_FROM_WARMEST = 4; // K
const WIDE_FROM_EVENING = 3.5; // K
const WIDE_DF = 4;

function spreadOf(values: readonly number[], from: number): Beforehand | null {
  const last = values.slice(-MOST_NIGHTS);
  if (last.length < FEWEST_NIGHTS) return null;
  const mean = last.reduce((sum, value) => sum + value, 0) / last.length;
  const squares = last.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const sd = Math.max(WIDENED * Math.sqrt(squares / (last.length - 1)), LEAST_SPREAD);
  return {
    low: { mean: from + mean, sd, df: last.length - 1 },
    method: 'recent-nights',
    nightsLearned: last.length,
    error: sd,
  };
}

/** How far recent nights fell from the same hour, taken from today's reading. */
function recentDrops(nights: readonly NightRecord[], kind: Kind, today: Predictor) {
  const drops = nights.flatMap((night) => {
    const start = night[kind];
    return start === null || night.low === null ? [] : [night.low - start.temperature];
  });
  return spreadOf(drops, today.temperature);
}

/**
 * Last night's low again, as sure as one night has been like the next. Of the means of one to
 * fourteen nights it had the smallest error on a year of airport nights (NOAA surface observations).
 */
function recentLows(nights: readonly NightRecord[]): Beforehand | null {
  const lows = nights.slice(-MOST_NIGHTS - 1).map(({ low }) => low);
  const changes = lows.flatMap((low, i) => {
    const before = lows[i - 1];
    return low === null || before === null || before === undefined ? [] : [low - before];
  });
  const last = lows.findLast((low) => low !== null);
  if (last === undefined || last === null || changes.length < FEWEST_NIGHTS) return null;
  const squares = changes.reduce((sum, change) => sum + change ** 2, 0);
  const sd = Math.max(Math.sqrt(squares / changes.length), LEAST_SPREAD);
  return {
    low: { mean: last, sd, df: changes.length },
    method: 'recent-nights',
    nightsLearned: changes.length + 1,
    error: sd,
  };
}

/** A guess from the day's warmth, or from the evening, and a station's nights where they are known. */
function wideDefault({ evening, warmest }: Clues, prior: SpotPrior | null): Beforehand {
  const guess =
    evening === null
      ? { mean: warmest - DROP_FROM_WARMEST, sd: WIDE_FROM_WARMEST, df: WIDE_DF }
      : { mean: evening.temperature - DROP_FROM_EVENING, sd: WIDE_FROM_EVENING, df: WIDE_DF };
  if (prior === null || !(prior.sd > 0)) {
    return { low: guess, method: 'wide-default', nightsLearned: 0, error: guess.sd };
  }
  // Two guesses that know different things: weighed by the inverse of their variances (textbook).
  const [own, theirs] = [guess.sd ** -2, prior.sd ** -2];
  const mean = (own * guess.mean + theirs * prior.mean) / (own + theirs);
  const sd = Math.sqrt(1 / (own + theirs));
  return { low: { mean, sd, df: WIDE_DF }, method: 'station', nightsLearned: 0, error: sd };
}

/**
 * The best that can be said: the evening regression (FAO 2005), the same on the afternoon reading,
 * recent nights, and a wide default of ours, in that order.
 */
export function lowBeforehand(
  nights: readonly NightRecord[],
  clues: Clues,
  prior: SpotPrior | null = null,
): Beforehand {
  const { evening, afternoon, morning = null } = clues;
  return (
    (evening && regression(nights, 'evening', evening)) ??
    (afternoon && regression(nights, 'afternoon', afternoon)) ??
    (evening && recentDrops(nights, 'evening', evening)) ??
    (evening === null && afternoon ? recentDrops(nights, 'afternoon', afternoon) : null) ??
    (evening === null ? (lowByMorning(nights, morning) ?? recentLows(nights)) : null) ??
    wideDefault(clues, prior)
  );
}
