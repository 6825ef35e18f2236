import { type Celsius, celsius, type Percent, percent } from '../units.ts';
import type { Air } from './airHolding.ts';
import { dewPoint } from './dewPoint.ts';
import { acceptsAirTemperature } from './expectAirTemperature.ts';
import { acceptsHumidity, usableHumidity } from './usableHumidity.ts';

// Below it a capacitive probe in a garden is taken for dead; ours.
const DEAD_BELOW = 5; // %

/**
 * Air out of two readings, or null when they do not make one: a null, no number, outside -30..60 °C
 * or above 0..105 %. Humidity above 100 is read as 100. For series, where one impossible reading
 * is unknown time and not an error.
 */
export function knownAir(temperature: number | null, humidity: number | null): Air | null {
  const known = knownHumidity(humidity);
  if (temperature === null || known === null || !acceptsAirTemperature(temperature)) return null;
  return { temperature: celsius(temperature), humidity: known };
}

/** The humidity to reckon with, as knownAir has it, where the temperature does not matter. */
export function knownHumidity(humidity: number | null): Percent | null {
  if (humidity === null || !acceptsHumidity(humidity)) return null;
  return usableHumidity(percent(humidity));
}

/**
 * The dew point where readings give one, else null: as knownAir, and a humidity under 5 % is a dead
 * probe, whose dew point nobody should act on.
 */
export function knownDewPoint(temperature: number | null, humidity: number | null): Celsius | null {
  const air = knownAir(temperature, humidity);
  if (air === null || air.humidity < DEAD_BELOW) return null;
  return dewPoint(air.temperature, air.humidity);
}
