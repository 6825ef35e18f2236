import { orUnknown } from '../orUnknown.ts';
import { type Celsius, type Kelvin, kelvin, type Percent } from '../units.ts';
import { dewPoint } from './dewPoint.ts';

/**
 * How far this air is from its dew point, K. On clear calm nights leaves run 1-3 K colder than
 * the air (common practice, no source), so below 2 K dew is to be assumed.
 * Null for a null.
 * @throws RangeError outside -30..60 °C or above 0..105 %
 */
export const dewPointDepression = orUnknown(function dewPointDepression(
  air: Celsius,
  humidity: Percent,
): Kelvin {
  return kelvin(air - dewPoint(air, humidity));
});
