import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { type Celsius, celsius, type Kelvin, type Percent, percent } from '../units.ts';
import { saturationVapourPressure } from './saturationVapourPressure.ts';

/**
 * Relative humidity of air whose dew point lies so far below its temperature, %:
 * 100 es(t - depression) / es(t). Null for a null.
 *
 * 2 K is 86.4 % at 0 °C and 88.7 % at 25 °C: nearly the line of a constant humidity threshold.
 * @throws RangeError outside -30..60 °C for either temperature, or a depression outside 0..60 K
 */
export const humidityAtDepression = orUnknown(function humidityAtDepression(
  air: Celsius,
  depression: Kelvin,
): Percent {
  expectRange('dew-point depression', depression, 0, 60, 'K');
  const dew = saturationVapourPressure(celsius(air - depression));
  return percent((100 * dew) / saturationVapourPressure(air));
});
