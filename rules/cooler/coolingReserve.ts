import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';
import { type Hours, hours } from '../units.ts';
import { warmingTime } from './warmingTime.ts';

const ICE = 334; // kJ/kg, latent heat of melting; CRC Handbook (from memory)
const KILOJOULES = 3600; // kJ of one kWh

/**
 * How long the cooling may stay off, h, from a room pre-cooled to `start` until its air reaches
 * `limit`; null for as long as outside stays at or below the limit. Pre-cool no lower than the most
 * cold-sensitive lot bears.
 * Source: Newton's law of cooling.
 * @throws RangeError as warmingTime
 */
export const offTimeAllowed = orUnknownField(function offTimeAllowed(night: {
  readonly start: number;
  readonly limit: number;
  readonly outside: number;
  readonly tauHours: number;
}): Hours | null {
  const { start, limit, outside, tauHours } = night;
  return warmingTime({ inside: start, outside, target: limit, tauHours });
});

/**
 * Time constant a room needs to stay below `limit` for `hours` without cooling; null when it is
 * over already, 0 when outside never gets it there.
 * Source: Newton's law of cooling.
 * @throws RangeError for temperatures outside -60..80 °C or hours outside 0..10,000
 */
export const timeConstantNeeded = orUnknownField(function timeConstantNeeded(night: {
  readonly start: number;
  readonly limit: number;
  readonly outside: number;
  readonly hours: number;
}): Hours | null {
  const { start, limit, outside } = night;
  expectRange('start temperature', start, -60, 80, '°C');
  expectRange('limit', limit, -60, 80, '°C');
  expectRange('outside temperature', outside, -60, 80, '°C');
  expectRange('hours', night.hours, 0, 10_000, 'h');
  if (start >= limit) return null;
  if (outside <= limit) return hours(0);
  return hours(night.hours / Math.log((outside - start) / (outside - limit)));
});

/**
 * Ice that takes up a room's heat while cooling is off, before losses: the heat in kWh, and kg of
 * ice melted at 334 kJ/kg. 0 when outside is not warmer.
 * Source: steady heat balance.
 * @param off heat loss coefficient W/K, temperatures °C, hours without cooling
 * @throws RangeError for a coefficient or hours below 0, temperatures outside -60..80 °C
 */
export const iceStore = orUnknownField(function iceStore(off: {
  readonly coefficient: number;
  readonly outside: number;
  readonly inside: number;
  readonly hours: number;
}): { readonly kilowattHours: number; readonly kilograms: number } {
  expectRange('heat loss coefficient', off.coefficient, 0, 100_000, 'W/K');
  expectRange('outside temperature', off.outside, -60, 80, '°C');
  expectRange('inside temperature', off.inside, -60, 80, '°C');
  expectRange('hours', off.hours, 0, 10_000, 'h');
  const gap = Math.max(0, off.outside - off.inside);
  const kilowattHours = (off.coefficient * gap * off.hours) / 1000;
  return { kilowattHours, kilograms: (kilowattHours * KILOJOULES) / ICE };
});
