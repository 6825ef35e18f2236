import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { type Probability, probability } from '../units.ts';
import { expectCount } from './expectCount.ts';
import { upperGamma } from './incompleteGamma.ts';
import { lnGamma } from './lnGamma.ts';

const MOST_EVENTS = 1_000_000;

/**
 * Chance of exactly `events` when `mean` are expected.
 * Source: Poisson distribution, Abramowitz & Stegun 26.1.22.
 * @throws RangeError unless events is a whole number from 0 and mean from 0
 */
export const poissonChance = orUnknown(function poissonChance(
  events: number,
  mean: number,
): Probability {
  expectCount('events', events, 0, MOST_EVENTS);
  expectRange('mean number of events', mean, 0, MOST_EVENTS, '');
  if (mean === 0) return probability(events === 0 ? 1 : 0);
  return probability(Math.exp(events * Math.log(mean) - mean - lnGamma(events + 1)));
});

/**
 * Chance of at most `events` when `mean` are expected.
 * Source: Q(events + 1, mean), Abramowitz & Stegun 26.4.21; DLMF 8.4.10.
 * @throws RangeError unless events is a whole number from 0 and mean from 0
 */
export const poissonCdf = orUnknown(function poissonCdf(events: number, mean: number): Probability {
  expectCount('events', events, 0, MOST_EVENTS);
  expectRange('mean number of events', mean, 0, MOST_EVENTS, '');
  return probability(upperGamma(events + 1, mean));
});

/**
 * Exact limits of the true mean after `events` were counted: for false alarms in a month, say. The
 * lower is 0 when nothing was counted.
 * Source: Garwood 1936, Biometrika 28:437 (from memory); found by bisection on poissonCdf.
 * @param confidence share of such limits that hold the truth, 0.5..0.9999
 * @throws RangeError unless events is a whole number from 0 to 100,000
 */
export const poissonLimits = orUnknown(function poissonLimits(
  events: number,
  confidence: number = 0.95,
): readonly [low: number, high: number] {
  expectCount('events', events, 0, 100_000);
  expectRange('confidence', confidence, 0.5, 0.9999, '');
  const tail = (1 - confidence) / 2;
  const low = events === 0 ? 0 : meanWith((mean) => upperGamma(events, mean), 1 - tail, events);
  const high = meanWith((mean) => upperGamma(events + 1, mean), tail, events);
  return [low, high];
});

/** The mean at which a chance that falls with it is `wanted`. */
function meanWith(chance: (mean: number) => number, wanted: number, events: number): number {
  let low = 0;
  let high = events + 1;
  while (chance(high) > wanted) high *= 2;
  for (let step = 0; step < 100; step += 1) {
    const middle = (low + high) / 2;
    if (chance(middle) > wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
