import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import type { Celsius, Kilopascal, Percent } from '../units.ts';
import { vapourPressure } from './vapourPressure.ts';

// Ratio of the molar masses of water and dry air, ASHRAE Handbook Fundamentals, psychrometrics.
const WATER_TO_AIR = 0.621945;

/** Sea level, standard atmosphere, kPa. */
export const SEA_LEVEL = 101.325;

/** Lowest air pressure accepted, kPa: some 4,500 m up. */
const THINNEST = 55; // ours

/** Mass of vapour to mass of dry air at this vapour pressure, kg/kg. */
export const ratioAt = (vapour: number, pressure: number) =>
  (WATER_TO_AIR * vapour) / (pressure - vapour);

export function expectPressure(pressure: number) {
  expectRange('air pressure', pressure, THINNEST, 110, 'kPa');
}

/**
 * Mass of vapour to mass of dry air, kg/kg.
 * Null for a null.
 * @throws RangeError outside -30..60 °C, above 0..105 % or 55..110 kPa
 */
export const humidityRatio = orUnknown(function humidityRatio(
  air: Celsius,
  humidity: Percent,
  pressure: Kilopascal | number = SEA_LEVEL,
): number {
  expectPressure(pressure);
  return ratioAt(vapourPressure(air, humidity), pressure);
});
