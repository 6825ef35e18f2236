import { orUnknown } from '../orUnknown.ts';
import { type Celsius, type Kilopascal, kilopascal, type Percent } from '../units.ts';
import { saturationVapourPressure } from './saturationVapourPressure.ts';
import { usableHumidity } from './usableHumidity.ts';

/**
 * Pressure of the water vapour this air holds, kPa. Humidity is by convention over liquid water,
 * also below 0 °C (American Meteorological Society glossary, "relative humidity").
 * Null for a null.
 * @throws RangeError outside -30..60 °C or above 0..105 %
 */
export const vapourPressure = orUnknown(function vapourPressure(
  air: Celsius,
  humidity: Percent,
): Kilopascal {
  return kilopascal((saturationVapourPressure(air) * usableHumidity(humidity)) / 100);
});
