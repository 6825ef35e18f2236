import { expectRange } from '../expectRange.ts';
import { MISSING_TO_RESTART } from './ewmaChart.ts';

export type CusumPoint = {
  /** Sum of what lay above target + slack; never below 0. */
  readonly high: number;
  /** Sum of what lay below target - slack; never below 0. */
  readonly low: number;
  readonly signal: 'high' | 'low' | null;
  /** Both sums began again at 0 here, as three samples in a row were missing. */
  readonly restarted: boolean;
};

export type Cusum = {
  readonly points: readonly CusumPoint[];
  /** Index of the first sample at which a sum passed the limit; null for none. */
  readonly firstSignal: number | null;
  /** Index of the first sample after that sum was last 0: when the shift began. */
  readonly began: number | null;
};

/**
 * Tabular cumulative sum: dates the start of a lasting shift. Shi = max(0, Shi + x - target - slack),
 * Slo = max(0, Slo + target - slack - x); a signal when either passes `limit`.
 *
 * A missing sample (null) leaves both sums as they are; after three in a row both begin again at 0.
 *
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods 6.3.2.3.
 * @param slack half the shift that matters, in the samples' unit, from 0 (k in the handbook)
 * @param limit decision limit, above 0 (h in the handbook)
 * @throws RangeError for slack below 0, limit not above 0, or a sample that is no number
 */
export function cusum(
  samples: readonly (number | null)[],
  {
    target,
    slack,
    limit,
  }: { readonly target: number; readonly slack: number; readonly limit: number },
): Cusum {
  expectRange('target', target ?? Number.NaN, -Number.MAX_VALUE, Number.MAX_VALUE, '');
  expectRange('slack', slack ?? Number.NaN, 0, Number.MAX_VALUE, '');
  expectRange('decision limit', limit, Number.MIN_VALUE, Number.MAX_VALUE, '');
  let high = 0;
  let low = 0;
  let missing = 0;
  // The first sample of the run that each sum grew over.
  let highFrom = 0;
  let lowFrom = 0;
  let firstSignal: number | null = null;
  let began: number | null = null;
  const points = samples.map((sample, index): CusumPoint => {
    let restarted = false;
    if (sample === null) {
      missing += 1;
      if (missing === MISSING_TO_RESTART) {
        high = 0;
        low = 0;
        restarted = true;
      }
      return { high, low, signal: null, restarted };
    }
    expectRange('sample', sample, -Number.MAX_VALUE, Number.MAX_VALUE, '');
    missing = 0;
    if (high === 0) highFrom = index;
    if (low === 0) lowFrom = index;
    high = Math.max(0, high + sample - target - slack);
    low = Math.max(0, low + target - slack - sample);
    const signal = high > limit ? 'high' : low > limit ? 'low' : null;
    if (signal !== null && firstSignal === null) {
      firstSignal = index;
      began = signal === 'high' ? highFrom : lowFrom;
    }
    return { high, low, signal, restarted };
  });
  return { points, firstSignal, began };
}
