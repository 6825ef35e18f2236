import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';

// Common practice, no source: small lightly loaded sets near 0.7, larger ones 0.25 to 0.35.
const LEAST_PER_KWH = 0.25; // L/kWh
const MOST_PER_KWH = 1.2; // L/kWh

// Heat in a litre of fuel, kWh. From memory.
const HEAT = { petrol: 8.9, diesel: 10 } as const;

const GALLON = 3.785411784; // L, the US liquid gallon, by definition
// kg of CO2 from a US gallon burnt. Source: US EPA greenhouse gas equivalencies; US EIA 2016.
const PER_GALLON = {
  epa: { petrol: 8.887, diesel: 10.18 },
  eia: { petrol: 8.89, diesel: 10.16 },
} as const;

export type Fuel = keyof typeof HEAT;

/** Litres of fuel an hour, from litres used in a run and its hours. */
export const litresPerHour = orUnknown(function litresPerHour(
  litres: number,
  hours: number,
): number | null {
  expectRange('fuel', litres, 0, 100_000, 'L');
  expectRange('hours', hours, 0, 100_000, 'h');
  return hours === 0 ? null : litres / hours;
});

export type FuelUse = {
  readonly litresPerKwh: number;
  /** Share of the fuel's heat that became electricity. */
  readonly efficiency: number;
  /** Outside 0.25 to 1.2 L/kWh: the entry should be looked at again. */
  readonly query: boolean;
};

/**
 * Fuel for each kWh a set made, and what that says of it. null when it made none.
 * @throws RangeError for fuel or energy below 0
 */
export const fuelUse = orUnknown(function fuelUse(
  litres: number,
  kilowattHours: number,
  fuel: Fuel = 'petrol',
): FuelUse | null {
  expectRange('fuel', litres, 0, 100_000, 'L');
  expectRange('energy', kilowattHours, 0, 1_000_000, 'kWh');
  if (kilowattHours === 0) return null;
  const litresPerKwh = litres / kilowattHours;
  return {
    litresPerKwh,
    efficiency: kilowattHours / (litres * HEAT[fuel]),
    query: !(litresPerKwh >= LEAST_PER_KWH && litresPerKwh <= MOST_PER_KWH),
  };
});

/**
 * Carbon dioxide from burning fuel, kg. Burning only, without what making and moving it cost; a
 * blend needs a local factor.
 * @param by whose factor: US EPA (2.3477 and 2.6893 kg/L) or US EIA 2016 (2.3485 and 2.6840)
 * @throws RangeError for fuel below 0
 */
export const carbonDioxide = orUnknown(function carbonDioxide(
  litres: number,
  fuel: Fuel,
  by: 'epa' | 'eia' = 'epa',
): number {
  expectRange('fuel', litres, 0, 1_000_000, 'L');
  return (litres * PER_GALLON[by][fuel]) / GALLON;
});
