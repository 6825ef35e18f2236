import { type Celsius, celsius, type DegreeDays, degreeDaysOf } from '../units.ts';
import { covariance, expectSowings, type Sowing } from './baseTemperature.ts';

/**
 * Base temperature and thermal time from the rate of development: the straight line of 1 / days on
 * temperature, where it meets zero and one over its slope; and the share of the rate's variance it
 * explains. The classical x-intercept method, and the one for germination tables, where whole days
 * leave the base unsure by 1 to 2 °C. null when warmth did not speed things up, so that there is
 * no base to find.
 * @throws RangeError as baseTemperature
 */
export function rateIntercept(sowings: readonly Sowing[]): {
  readonly base: Celsius;
  readonly degreeDays: DegreeDays;
  readonly r2: number;
} | null {
  expectSowings(sowings);
  const T = sowings.map(({ temperature }) => temperature);
  const rate = sowings.map(({ days }) => 1 / days);
  const spread = covariance(T, T);
  const together = covariance(T, rate);
  const slope = spread === 0 ? 0 : together / spread;
  if (slope <= 0) return null;
  const meanOf = (values: readonly number[]) =>
    values.reduce((sum, v) => sum + v, 0) / values.length;
  return {
    base: celsius(meanOf(T) - meanOf(rate) / slope),
    degreeDays: degreeDaysOf(1 / slope),
    r2: (slope * together) / covariance(rate, rate),
  };
}
