import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { type Celsius, type Kilopascal, type Percent, percent } from '../units.ts';
import { saturationVapourPressure } from './saturationVapourPressure.ts';

/**
 * Relative humidity at which air of this temperature has a given vapour pressure deficit, %:
 * vapourPressureDeficit turned round. Null for a null.
 *
 * Shows where a fixed target is useless: 0.5 kPa asks for 84 % at 25 °C and for 43 % at 5 °C, which
 * an unheated house does not reach.
 * @throws RangeError outside -30..60 °C, or for a deficit no air of that temperature can have
 */
export const humidityForDeficit = orUnknown(function humidityForDeficit(
  air: Celsius,
  deficit: Kilopascal,
): Percent {
  const saturation = saturationVapourPressure(air);
  expectRange('vapour pressure deficit', deficit, 0, saturation, 'kPa');
  return percent(100 * (1 - deficit / saturation));
});
