import { orUnknown } from '../orUnknown.ts';
import { type Celsius, type Kilopascal, kilopascal } from '../units.ts';
import { expectAirTemperature } from './expectAirTemperature.ts';

// Tetens form, es(t) = 0.6108 exp(17.27 t / (t + 237.3)) kPa, over liquid water.
// Source: FAO Irrigation and Drainage Paper 56 (Allen, Pereira, Raes & Smith 1998), eq. 11.
// Made for 0..50 °C; within 0.15 % of the ASHRAE form up to 45 °C.
export const AT_FREEZING = 0.6108; // kPa
export const WATER_A = 17.27; // dimensionless
export const WATER_B = 237.3; // °C

/**
 * Pressure of water vapour at which air of this temperature is saturated, kPa.
 *
 * Over liquid water at every temperature, below 0 °C too: that is how relative humidity is
 * reported by convention, and how capacitive probes respond.
 * Null for a null.
 * @throws RangeError outside -30..60 °C
 */
export const saturationVapourPressure = orUnknown(function saturationVapourPressure(
  air: Celsius,
): Kilopascal {
  expectAirTemperature(air);
  return kilopascal(AT_FREEZING * Math.exp((WATER_A * air) / (air + WATER_B)));
});
