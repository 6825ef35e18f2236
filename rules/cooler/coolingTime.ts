import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { orUnknownField } from '../orUnknownField.ts';
import { type Hours, hours } from '../units.ts';
import { expectTimeConstant } from './warmingTime.ts';

/**
 * Time in which produce gets half-way to the temperature of its room: tau ln 2.
 * Source: half-cooling time, USDA Agriculture Handbook 66 (from memory).
 * @param tauHours time constant of the produce in its package, h
 * @throws RangeError for a time constant not above 0
 */
export const halfCoolingTime = orUnknown(function halfCoolingTime(tauHours: number): Hours {
  expectTimeConstant(tauHours);
  return hours(tauHours * Math.log(2));
});

/**
 * Time in which produce gets seven eighths of the way: three half-cooling times, tau ln 8.
 * Source: seven-eighths cooling time, USDA Agriculture Handbook 66 (from memory).
 * @throws RangeError for a time constant not above 0
 */
export const sevenEighthsCoolingTime = orUnknown(function sevenEighthsCoolingTime(
  tauHours: number,
): Hours {
  expectTimeConstant(tauHours);
  return hours(tauHours * Math.log(8));
});

/**
 * Hours until produce put away at `produce` °C reaches `target` in a room at `room` °C. 0 when it
 * is there already; null, never, when the room itself is not below the target, or not known.
 *
 * Source: Newton's law of cooling.
 * @throws RangeError for temperatures outside -60..80 °C, or a time constant not above 0
 */
export const coolingTime = orUnknownField(function coolingTime(crate: {
  readonly produce: number;
  readonly room: number;
  readonly target: number;
  readonly produceTauHours: number;
}): Hours | null {
  const { produce, room, target, produceTauHours } = crate;
  expectRange('produce temperature', produce, -60, 80, '°C');
  expectRange('room temperature', room, -60, 80, '°C');
  expectRange('target temperature', target, -60, 80, '°C');
  expectTimeConstant(produceTauHours);
  if (produce <= target) return hours(0);
  if (room >= target) return null;
  return hours(produceTauHours * Math.log((produce - room) / (target - room)));
});
