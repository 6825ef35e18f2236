import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';
import { type Celsius, celsius, type Hours, hours } from '../units.ts';

/**
 * Hours until a room without cooling warms from `inside` to `target`, °C. 0 when it is there
 * already; null, never, while outside stays at or below the target; null too when a value is not
 * known. To be careful, give the highest outside temperature expected in the next 12 hours, and
 * show the time for a time constant a tenth shorter.
 *
 * Source: Newton's law of cooling, t = tau ln((To - Ti) / (To - L)).
 * @throws RangeError for temperatures outside -60..80 °C, or a time constant not above 0
 */
export const warmingTime = orUnknownField(function warmingTime(room: {
  readonly inside: number;
  readonly outside: number;
  readonly target: number;
  readonly tauHours: number;
}): Hours | null {
  const { inside, outside, target, tauHours } = room;
  expectRange('inside temperature', inside, -60, 80, '°C');
  expectRange('outside temperature', outside, -60, 80, '°C');
  expectRange('target temperature', target, -60, 80, '°C');
  expectTimeConstant(tauHours);
  if (inside >= target) return hours(0);
  if (outside <= target) return null;
  return hours(tauHours * Math.log((outside - inside) / (outside - target)));
});

/**
 * Temperature of a room `after` hours without cooling: T = To - (To - Ti) exp(-t / tau).
 *
 * Source: Newton's law of cooling.
 * @throws RangeError for temperatures outside -60..80 °C, a time constant not above 0, or past time
 */
export const warmedTo = orUnknownField(function warmedTo(room: {
  readonly inside: number;
  readonly outside: number;
  readonly tauHours: number;
  readonly after: number;
}): Celsius {
  const { inside, outside, tauHours, after } = room;
  expectRange('inside temperature', inside, -60, 80, '°C');
  expectRange('outside temperature', outside, -60, 80, '°C');
  expectTimeConstant(tauHours);
  expectRange('hours after the stop', after, 0, 100_000, 'h');
  return celsius(outside - (outside - inside) * Math.exp(-after / tauHours));
});

// A crate of berries takes an hour or two, a full insulated room some days.
export function expectTimeConstant(tauHours: number) {
  expectRange('time constant', tauHours, 0.01, 10_000, 'h');
}
