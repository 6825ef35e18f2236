import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';

// Burning one mole of sugar gives 673 kcal and six moles of CO2, 264 g: 10.67 J for each mg.
// Source: USDA Agriculture Handbook 66 (2016), Saltveit, respiratory metabolism.
const KILOCALORIES = 673; // per mole of sugar
const JOULES = 4184; // per kcal, thermochemical
const MILLIGRAMS = 264_000; // of CO2 per mole of sugar
const HOUR_SECONDS = 3600;

/**
 * Heat that produce breathes out, W: about 2.963 W per tonne for each mg of CO2 per kg and hour.
 *
 * Source: USDA Agriculture Handbook 66 (2016), Saltveit, respiratory metabolism.
 * @param rate respiration, mg CO2 / (kg h), at the temperature of the produce
 * @param mass kg
 * @throws RangeError for a rate outside 0..2000 or a mass below 0
 */
export const respirationHeat = orUnknown(function respirationHeat(
  rate: number,
  mass: number,
): number {
  expectRange('respiration rate', rate, 0, 2000, 'mg CO2/(kg h)');
  expectRange('mass', mass, 0, 1_000_000, 'kg');
  return (((KILOCALORIES * JOULES) / MILLIGRAMS) * rate * mass) / HOUR_SECONDS;
});
