import { type CoolingNight, coolingCurve } from './coolingCurve.ts';
import type { NightReading } from './nightUpdate.ts';

// Common practice, no source.
const ABOVE = 1; // K over the curve
const RISE = 0.5; // K over the lowest reading of the night

/**
 * Whether cloud or wind has come in: the latest reading is more than 1 K above the cooling curve,
 * or half a kelvin above the lowest since two hours after sunset. Then unsureSky speaks, and no
 * longer the curve. null without a reading, or without a curve.
 * @param readings in order of time
 */
export function leftCurve(night: CoolingNight, readings: readonly NightReading[]): boolean | null {
  const since = readings.filter(({ after }) => after >= 2);
  const last = since.at(-1);
  const curve = last === undefined ? null : coolingCurve(night, last.after);
  if (last === undefined || curve === null) return null;
  const lowest = Math.min(...since.map(({ value }) => value));
  return last.value - curve > ABOVE || last.value - lowest >= RISE;
}
