import { orUnknown } from '../orUnknown.ts';
import { type Celsius, type Kilopascal, kilopascal, type Percent } from '../units.ts';
import { saturationVapourPressure } from './saturationVapourPressure.ts';
import { usableHumidity } from './usableHumidity.ts';

/**
 * Drying power of the air: how much more vapour it could hold, kPa. Of the air, not of the leaf,
 * whose temperature is not measured.
 * Null for a null.
 * @throws RangeError outside -30..60 °C or above 0..105 %
 */
export const vapourPressureDeficit = orUnknown(function vapourPressureDeficit(
  air: Celsius,
  humidity: Percent,
): Kilopascal {
  return kilopascal(saturationVapourPressure(air) * (1 - usableHumidity(humidity) / 100));
});
