import { expectRange } from '../expectRange.ts';
import { type MaybeTemperature, walkSegments } from '../heat/index.ts';
import { type Celsius, celsius, HOUR, type Instant, instant, MINUTE } from '../units.ts';
import { expectTimeConstant } from './warmingTime.ts';

const STEP = MINUTE; // ms; the room is looked at each minute for the crossing

/**
 * A room without cooling while the temperature outside moves: dT = (To(t) - T) / tau dt, outside
 * joined by straight lines between its readings. `end` is the room at the last of them and
 * `targetAt` when it first reached the target, to the minute; null for not reached. Both are null
 * when outside has a gap or a null: what follows one is not known.
 *
 * Source: Newton's law of cooling with a linear forcing, solved exactly for each step.
 * @param outside series to go by, a forecast or yesterday's, from the moment cooling stops
 * @throws RangeError for temperatures outside -60..80 °C, or a time constant not above 0
 */
export function warmingUnder(
  outside: readonly MaybeTemperature[],
  {
    inside,
    target,
    tauHours,
    gapMaxMinutes = 90,
  }: {
    readonly inside: number | null;
    readonly target: number;
    readonly tauHours: number;
    readonly gapMaxMinutes?: number;
  },
): { readonly end: Celsius | null; readonly targetAt: Instant | null } {
  const unknown = { end: null, targetAt: null };
  if (inside === null) return unknown;
  expectRange('inside temperature', inside, -60, 80, '°C');
  expectRange('target temperature', target, -60, 80, '°C');
  expectTimeConstant(tauHours);
  const from = outside[0]?.t;
  const to = outside.at(-1)?.t;
  if (from === undefined || to === undefined) return unknown;

  const tau = tauHours * HOUR;
  let room = inside;
  let at: number = from;
  let targetAt: Instant | null = inside >= target ? from : null;
  const covered = walkSegments(outside, gapMaxMinutes, from, to, (length, start, end) => {
    const slope = (end - start) / length;
    for (let done = 0; done < length; ) {
      const step = Math.min(STEP, length - done);
      const out = start + slope * done;
      const lag = slope * tau; // how far the room stays behind a steady rise outside
      room = out + slope * step - lag + (room - out + lag) * Math.exp(-step / tau);
      done += step;
      at += step;
      if (targetAt === null && room >= target) targetAt = instant(at);
    }
  });
  return covered === to - from ? { end: celsius(room), targetAt } : unknown;
}
