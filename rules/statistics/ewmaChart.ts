import { expectRange } from '../expectRange.ts';

/** Missing values in a row after which a chart begins again. Common practice, no source. */
export const MISSING_TO_RESTART = 3;

export type EwmaPoint = {
  /** The weighted mean after this sample. */
  readonly z: number;
  readonly low: number;
  readonly high: number;
  /** Whether z left its limits; null where the sample is missing. */
  readonly signal: boolean | null;
  /** The chart began again here, from the last good value, as three in a row were missing. */
  readonly restarted: boolean;
};

export type EwmaSettings = {
  readonly target: number;
  /** Standard deviation of single samples from good times. */
  readonly sd: number;
  /** Weight of the newest sample, above 0 to 1. */
  readonly lambda: number;
  /** Width of the limits, in standard deviations of z; 3 is usual. */
  readonly width?: number;
  /** Narrower limits at first, by 1 - (1 - lambda)^(2t). */
  readonly startUp?: boolean;
};

/**
 * Exponentially weighted moving average chart: shows a small lasting shift in values that are nearly
 * independent, such as one per day; raw minutes of a thermostat are not (ewmaAutocorrelationFactor).
 * z_0 = target; z_t = lambda x_t + (1 - lambda) z_(t-1); limits target ± width sd
 * sqrt(lambda / (2 - lambda)).
 *
 * A missing sample (null) leaves z as it is. After three in a row the chart begins again from the
 * last good value, and the point says so.
 *
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods 6.3.2.4.
 * @throws RangeError for lambda outside (0, 1], sd or width not above 0, or a sample that is no number
 */
export function ewmaChart(
  samples: readonly (number | null)[],
  { target, sd, lambda, width = 3, startUp = false }: EwmaSettings,
): EwmaPoint[] {
  expectRange('target', target ?? Number.NaN, -Number.MAX_VALUE, Number.MAX_VALUE, '');
  expectRange('lambda', lambda, Number.MIN_VALUE, 1, '');
  expectRange('standard deviation', sd, Number.MIN_VALUE, Number.MAX_VALUE, '');
  expectRange('width', width, Number.MIN_VALUE, 100, '');
  const widest = width * sd * Math.sqrt(lambda / (2 - lambda));
  let z = target;
  let last: number | null = null;
  let missing = 0;
  let t = 0; // samples since the start
  return samples.map((sample) => {
    let restarted = false;
    if (sample === null) {
      missing += 1;
      if (missing === MISSING_TO_RESTART && last !== null) {
        z = last;
        t = 0;
        restarted = true;
      }
    } else {
      expectRange('sample', sample, -Number.MAX_VALUE, Number.MAX_VALUE, '');
      missing = 0;
      t += 1;
      last = sample;
      z = lambda * sample + (1 - lambda) * z;
    }
    const half = startUp ? widest * Math.sqrt(1 - (1 - lambda) ** (2 * Math.max(1, t))) : widest;
    const signal = sample === null ? null : Math.abs(z - target) > half;
    return { z, low: target - half, high: target + half, signal, restarted };
  });
}
