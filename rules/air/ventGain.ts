import { orUnknown } from '../orUnknown.ts';
import { type GramsPerCubicMetre, gramsPerCubicMetre } from '../units.ts';
import { vapourDensity } from './absoluteHumidity.ts';
import type { Air } from './airHolding.ts';
import { vapourPressure } from './vapourPressure.ts';

/**
 * Where opening begins to dry for certain, g/m³. Ours: at 12 °C it is 0.04 kPa, the difference two
 * good probes of ±2 % show by chance.
 */
export const CLEAR_GAIN = gramsPerCubicMetre(0.3);

/**
 * How much drier the place gets by opening: water in the inside air less that in the outside air,
 * both at the inside temperature, g/m³. Above 0 outside is drier; between -0.3 and 0.3 there is no
 * clear difference. Relative humidities are never compared: outside at 100 % may be drier.
 * Null for a null.
 * @throws RangeError outside -30..60 °C or above 0..105 %
 */
export const ventGain = orUnknown(function ventGain(inside: Air, outside: Air): GramsPerCubicMetre {
  const difference =
    vapourPressure(inside.temperature, inside.humidity) -
    vapourPressure(outside.temperature, outside.humidity);
  return vapourDensity(difference, inside.temperature);
});
