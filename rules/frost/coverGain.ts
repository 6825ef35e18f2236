import { expectRange } from '../expectRange.ts';
import { median } from '../statistics/index.ts';
import { type Kelvin, kelvin, type Probability, probability } from '../units.ts';
import { probabilityBelow } from './probabilityBelow.ts';
import { weibullQuantile } from './weibullQuantile.ts';

// Plan with the gain that nine nights in ten reach, and with none before nine nights are in:
// common practice, no source. A tenth is the least that nine nights can tell (Weibull).
const PLAN_WITH = 0.1;
const FEWEST = 9;

/** A clear, calm night under a cover: its low less that of the same spot uncovered, K. */
export type CoveredNight = {
  readonly gain: number | null;
  /** Wet fabric on the leaves, a lifted edge, a tunnel opened late: tells nothing of the cover. */
  readonly spoilt?: boolean | undefined;
};

const known = (nights: readonly CoveredNight[]): number[] =>
  nights.flatMap(({ gain, spoilt }) => {
    if (gain === null || spoilt === true) return [];
    expectRange('gain of a cover', gain, -20, 20, 'K');
    return [gain];
  });

/**
 * What a cover adds on clear, calm nights, learned from a probe beneath it: there is no fixed lift.
 * On such nights covers have given nothing, or less, and heavier cloth was not better (North
 * Willamette, Oregon State University 1988; a North Carolina State trial, second hand). `planWith`
 * is the gain that nine nights in ten reach, 0 until there are nine nights.
 */
export function coverGain(nights: readonly CoveredNight[]): {
  readonly planWith: Kelvin;
  readonly median: Kelvin | null;
  readonly nights: number;
} {
  const gains = known(nights);
  const tenth = gains.length < FEWEST ? null : weibullQuantile(gains, PLAN_WITH);
  return {
    planWith: kelvin(tenth ?? 0),
    median: gains.length === 0 ? null : kelvin(median(gains)),
    nights: gains.length,
  };
}

/**
 * Chance that it goes below `threshold` (°C) under the cover: the mean over past gains of the
 * chance of going that much lower outside. With fewer than nine nights, the chance outside.
 * @param low forecast for the spot uncovered: predictNightLow
 */
export function probabilityInside(
  low: { readonly mean: number; readonly sd: number; readonly df: number },
  nights: readonly CoveredNight[],
  threshold: number,
): Probability {
  const gains = known(nights);
  if (gains.length < FEWEST) return probabilityBelow(low, threshold);
  const sum = gains.reduce((total, gain) => total + probabilityBelow(low, threshold - gain), 0);
  return probability(sum / gains.length);
}
