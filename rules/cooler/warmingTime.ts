import { expectRange } from '../expectRange.ts';
import { type Hours, hours } from '../units.ts';

/**
 * Hours until a room without cooling warms from `inside` to `target`, °C. 0 when it is there
 * already; null, never, while outside stays at or below the target. To be careful, give the
 * highest outside temperature expected.
 *
 * Source: Newton's law of cooling, t = tau ln((To - Ti) / (To - L)).
 * @throws RangeError for temperatures outside -60..80 °C, or a time constant not above 0
 */
export function warmingTime(room: {
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
}

// A crate of berries takes an hour or two, a full insulated room some days.
export function expectTimeConstant(tauHours: number) {
  expectRange('time constant', tauHours, 0.01, 10_000, 'h');
}
