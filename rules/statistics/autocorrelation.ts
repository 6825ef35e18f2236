import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { expectCount } from './expectCount.ts';
import { expectNumbers } from './expectNumbers.ts';
import { meanOf } from './meanOf.ts';

/**
 * Correlation of a series with itself one sample later (lag 1); null when it never changes.
 * Source: Box & Jenkins 1970, Time Series Analysis, the sample autocorrelation (from memory).
 * @throws RangeError for fewer than 3 samples, or one that is no number
 */
export function autocorrelation(samples: readonly number[]): number | null {
  expectCount('samples', samples.length, 3);
  expectNumbers('sample', samples);
  const mean = meanOf(samples);
  let squares = 0;
  let products = 0;
  let before = 0;
  samples.forEach((sample, index) => {
    const away = sample - mean;
    squares += away * away;
    if (index > 0) products += before * away;
    before = away;
  });
  return squares === 0 ? null : products / squares;
}

/**
 * How many times wider an EWMA really spreads than its chart says, when samples follow each other
 * with correlation `phi`: sqrt((1 + phi (1 - lambda)) / (1 - phi (1 - lambda))). A thermostat's
 * minutes have phi about 0.95; charts on them signal without end.
 *
 * Source: Schmid 1997 on EWMA charts of first-order autoregressive series (from memory).
 * @param lambda weight of the newest sample, above 0 to 1
 * @throws RangeError for lambda outside (0, 1] or phi outside -0.999..0.999
 */
export const ewmaAutocorrelationFactor = orUnknown(function ewmaAutocorrelationFactor(
  lambda: number,
  phi: number,
): number {
  expectRange('lambda', lambda, Number.MIN_VALUE, 1, '');
  expectRange('autocorrelation', phi, -0.999, 0.999, '');
  const kept = phi * (1 - lambda);
  return Math.sqrt((1 + kept) / (1 - kept));
});

/**
 * How many independent samples `n` correlated ones are worth for their mean: n (1 - phi) / (1 + phi).
 * Source: first-order autoregressive series; Bayley & Hammersley 1946 (from memory).
 * @throws RangeError for n below 1 or phi outside 0..0.999
 */
export const effectiveSampleSize = orUnknown(function effectiveSampleSize(
  n: number,
  phi: number,
): number {
  expectRange('number of samples', n, 1, Number.MAX_VALUE, '');
  expectRange('autocorrelation', phi, 0, 0.999, '');
  return (n * (1 - phi)) / (1 + phi);
});
