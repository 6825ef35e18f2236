import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { type Celsius, type Hours, hours } from '../units.ts';

/** Temperatures between which a pathogen infects wet leaves, and how long it needs at its best. */
export type InfectionParameters = {
  readonly min: Celsius | number;
  readonly optimum: Celsius | number;
  readonly max: Celsius | number;
  /** Hours of wetness needed at the optimum. */
  readonly wetHours: Hours | number;
  /** More wetness than this is never needed between the limits, h; left out where not known. */
  readonly mostWetHours?: Hours | number;
};

/**
 * Hours of wetness needed at this temperature for a first light infection (20 % of inoculated
 * plants, or 5 % of their leaf area): wetHours / f(T), and mostWetHours at the most. null: never,
 * too cold or too hot; for a temperature that is null it is null too, so ask first.
 *
 * Source: Magarey, Sutton & Thayer 2005, Phytopathology 95:92, made for pathogens without better
 * data: good for ranking.
 * @throws RangeError unless min < optimum < max and wetHours is above 0
 */
export const infectionHours = orUnknown(neededHours);

/** The same for a temperature that is known, for sums over many pieces. */
export function neededHours(
  temperature: Celsius,
  { min, optimum, max, wetHours, mostWetHours }: InfectionParameters,
): Hours | null {
  expectRange('temperature', temperature, -60, 80, '°C');
  expectRange('lowest temperature of infection', min, -60, 80, '°C');
  expectRange('optimum temperature of infection', optimum, min, max, '°C');
  expectRange('hours of wetness at the optimum', wetHours, 0.1, 1000, 'h');
  if (mostWetHours !== undefined) {
    expectRange('most hours of wetness', mostWetHours, wetHours, 1000, 'h');
  }
  if (!(min < optimum && optimum < max)) {
    throw new RangeError(`Expected optimum from above ${min} to below ${max} °C, got ${optimum}`);
  }
  if (temperature <= min || temperature >= max) return null;
  const speed =
    ((max - temperature) / (max - optimum)) *
    ((temperature - min) / (optimum - min)) ** ((optimum - min) / (max - optimum));
  // Close to the limits the speed fades to nothing: then it is never, not a very large number.
  const needed = wetHours / speed;
  if (!Number.isFinite(needed)) return null;
  return hours(mostWetHours === undefined ? needed : Math.min(needed, mostWetHours));
}
