import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { type Celsius, type Kilopascal, kilopascal } from '../units.ts';

// esi(t) = 0.6108 exp(21.875 t / (t + 265.5)) kPa.
// Source: F. W. Murray 1967, J. Appl. Meteorol. 6:203 (21.8746 and 7.66 K), in the rounding used
// with eq. 11 of FAO-56. Within 0.2 % of the ASHRAE ice branch from -10 to 0 °C, 0.5 % down to -20 °C.
export const ICE_A = 21.875; // dimensionless
export const ICE_B = 265.5; // °C
const AT_FREEZING = 0.6108; // kPa

/**
 * Pressure of water vapour in balance with ice, kPa. Only for frost: humidity readings refer to
 * liquid water even in the cold.
 * Null for a null.
 * @throws RangeError outside -45..0 °C; there is no ice to be in balance with above
 */
export const saturationOverIce = orUnknown(function saturationOverIce(
  surface: Celsius,
): Kilopascal {
  expectRange('ice temperature', surface, -45, 0, '°C');
  return kilopascal(AT_FREEZING * Math.exp((ICE_A * surface) / (surface + ICE_B)));
});
