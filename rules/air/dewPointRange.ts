import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { type Celsius, celsius, type Kelvin, type Percent, percent } from '../units.ts';
import { dewPoint } from './dewPoint.ts';

const DRIEST = 1; // %: what a reading less its error is taken for at the least; ours

/**
 * Lowest and highest dew point that a probe of this accuracy leaves open. Its temperature error
 * moves the dew point along with the air, its humidity error widens it: ±2 % is about ±0.34 K at
 * 15 °C and 90 %. Null for a null.
 * @param humidityError ± percent points
 * @param temperatureError ± K
 * @throws RangeError outside -30..60 °C (with the error), above 0..105 %, or errors outside 0..20
 */
export const dewPointRange = orUnknown(function dewPointRange(
  air: Celsius,
  humidity: Percent,
  humidityError: number,
  temperatureError: Kelvin,
): readonly [Celsius, Celsius] {
  expectRange('humidity error', humidityError, 0, 20, '%');
  expectRange('temperature error', temperatureError, 0, 20, 'K');
  const at = (sign: number) =>
    dewPoint(
      celsius(air + sign * temperatureError),
      percent(Math.min(100, Math.max(DRIEST, humidity + sign * humidityError))),
    );
  return [at(-1), at(1)];
});
