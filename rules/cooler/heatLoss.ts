import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { orUnknownField } from '../orUnknownField.ts';
import { energyIndex } from './energyIndex.ts';
import { expectTimeConstant } from './warmingTime.ts';

const WATTS = 1000 / 24; // W of one kWh/d
const KILOJOULES = 3.6; // kJ of one W h

/**
 * Heat loss coefficient of a room (UA), W/K, from a day's energy, if other heat is small:
 * COP E 1000 / 24 / (To - Ti). The COP is an assumption: say "if the COP is 2". null under 3 K.
 * Source: steady heat balance.
 * @throws RangeError for a COP outside 0.3..10, and as energyIndex
 */
export const heatLossCoefficient = orUnknownField(function heatLossCoefficient(day: {
  readonly kilowattHours: number;
  readonly outside: number;
  readonly inside: number;
  readonly cop: number;
}): number | null {
  expectRange('coefficient of performance', day.cop, 0.3, 10, '');
  const index = energyIndex(day);
  return index === null ? null : day.cop * index * WATTS;
});

/**
 * Heat capacity of a room and what is in it, kJ/K: UA tau.
 * Source: Newton's law of cooling.
 * @param coefficient UA, W/K
 * @throws RangeError for a coefficient outside 0..100,000 W/K or a time constant not above 0
 */
export const heatCapacity = orUnknown(function heatCapacity(
  coefficient: number,
  tauHours: number,
): number {
  expectRange('heat loss coefficient', coefficient, 0, 100_000, 'W/K');
  expectTimeConstant(tauHours);
  return coefficient * tauHours * KILOJOULES;
});
