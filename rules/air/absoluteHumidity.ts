import { orUnknown } from '../orUnknown.ts';
import {
  type Celsius,
  type GramsPerCubicMetre,
  gramsPerCubicMetre,
  type Percent,
} from '../units.ts';
import { vapourPressure } from './vapourPressure.ts';

// Ideal gas: 1000 x 18.01528 g/mol over 8.314462 J/(mol K), for kPa.
const WATER_VAPOUR = 2166.74; // g K / (m³ kPa)
export const ZERO_CELSIUS = 273.15; // K

/** Density of water vapour at this vapour pressure (kPa) and temperature, g/m³. */
export const vapourDensity = (kilopascals: number, air: Celsius): GramsPerCubicMetre =>
  gramsPerCubicMetre((WATER_VAPOUR * kilopascals) / (air + ZERO_CELSIUS));

/**
 * Water in a cubic metre of this air, g/m³. Two places are compared through ventGain, which puts
 * both at one temperature: the same air warmed by 15 K expands and shows 5 % less here.
 * Null for a null.
 * @throws RangeError outside -30..60 °C or above 0..105 %
 */
export const absoluteHumidity = orUnknown(function absoluteHumidity(
  air: Celsius,
  humidity: Percent,
): GramsPerCubicMetre {
  return vapourDensity(vapourPressure(air, humidity), air);
});
