import { type Celsius, celsius, type DegreeDays, degreeDaysOf } from '../units.ts';
import { covariance, expectSowings, type Sowing } from './baseTemperature.ts';

/**
 * Base temperature and heat units from the rate of development: the straight line of 1 / days on
 * temperature, where it meets zero and one over its slope. The classical method for germination
 * tables. null when warmth did not speed things up, so that there is no base to find.
 * @throws RangeError as baseTemperature
 */
export function rateIntercept(
  sowings: readonly Sowing[],
): { readonly base: Celsius; readonly degreeDays: DegreeDays } | null {
  expectSowings(sowings);
  const T = sowings.map(({ temperature }) => temperature);
  const rate = sowings.map(({ days }) => 1 / days);
  const spread = covariance(T, T);
  const slope = spread === 0 ? 0 : covariance(T, rate) / spread;
  if (slope <= 0) return null;
  const meanOf = (values: readonly number[]) =>
    values.reduce((sum, v) => sum + v, 0) / values.length;
  return { base: celsius(meanOf(T) - meanOf(rate) / slope), degreeDays: degreeDaysOf(1 / slope) };
}
