import { orUnknown } from '../orUnknown.ts';
import { type Celsius, celsius, type Percent } from '../units.ts';
import { dewPoint } from './dewPoint.ts';
import { ICE_A, ICE_B } from './saturationOverIce.ts';
import { AT_FREEZING } from './saturationVapourPressure.ts';
import { vapourPressure } from './vapourPressure.ts';

/**
 * Temperature at which hoar begins to grow from this air; null when its dew point is not below
 * 0 °C (it wets before it freezes), and for a null. The ice curve of Murray 1967 turned round, with
 * the vapour reckoned from humidity over water.
 * @throws RangeError outside -30..60 °C or above 0..105 %
 */
export const frostPoint = orUnknown(function frostPoint(
  air: Celsius,
  humidity: Percent,
): Celsius | null {
  if (dewPoint(air, humidity) >= 0) return null;
  const ratio = Math.log(vapourPressure(air, humidity) / AT_FREEZING);
  return celsius((ICE_B * ratio) / (ICE_A - ratio));
});
