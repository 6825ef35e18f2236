import { orUnknown } from '../orUnknown.ts';
import { type Celsius, celsius, type Percent } from '../units.ts';
import { AT_FREEZING, WATER_A, WATER_B } from './saturationVapourPressure.ts';
import { usableHumidity } from './usableHumidity.ts';
import { vapourPressure } from './vapourPressure.ts';

/**
 * Temperature at which this air, cooled without gaining or losing vapour, begins to wet a leaf:
 * the saturation curve (FAO-56 eq. 11) turned round. Over liquid water at every temperature; for
 * hoar see frostPoint.
 * Null for a null.
 * @throws RangeError outside -30..60 °C or above 0..105 %
 */
export const dewPoint = orUnknown(function dewPoint(air: Celsius, humidity: Percent): Celsius {
  const vapour = vapourPressure(air, humidity);
  // True by definition at saturation. Said exactly, so that "is the leaf at the dew point?" never
  // hangs on the last bit of a logarithm.
  if (usableHumidity(humidity) === 100) return air;
  const ratio = Math.log(vapour / AT_FREEZING);
  return celsius(Math.min(air, (WATER_B * ratio) / (WATER_A - ratio)));
});
