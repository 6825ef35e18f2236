import { HOUR } from '../units.ts';
import { counterDifference } from './counterDifference.ts';
import type { Trace } from './trace.ts';

// A day's energy from what the room's meter says.

export type DayEnergy = {
  /** kWh a day, scaled for the time that no reading speaks for. */
  readonly kilowattHours: number;
  /** The least it can have been: a counter began again within the day. */
  readonly minimum: boolean;
};

const MODULUS = 1_000_000; // kWh: six digits, as common meters have. Common practice
const MOST = 20; // kW that a small room's supply can give. Ours
const DAY = 24 * HOUR;
const ENOUGH = 0.8; // share of the day that has to be known, common practice

/** By a counter, kWh; roll-over and reset told apart by counterDifference. null for too little of the day. */
export function countedDay({ t, value }: Trace, modulus = MODULUS): DayEnergy | null {
  const span = (t.at(-1) ?? 0) - (t[0] ?? 0);
  if (span < ENOUGH * DAY) return null;
  let sum = 0;
  let minimum = false;
  let from = value[0] as number;
  let at = t[0] as number;
  for (let i = 1; i < t.length; i++) {
    const to = value[i] as number;
    const hours = ((t[i] as number) - at) / HOUR;
    // A counter may step by a tenth of a kWh at once: what an hour may hold is allowed in any step.
    const step = counterDifference({ from, to, hours: Math.max(1, hours), modulus, most: MOST });
    if (step.amount === null) continue; // a spike: the next reading is held against the one before
    sum += step.amount;
    minimum ||= step.minimum;
    from = to;
    at = t[i] as number;
  }
  return { kilowattHours: (sum * DAY) / span, minimum };
}

/** By power, W, each reading until the next. null for too little of the day. */
export function drawnDay({ t, value }: Trace, hole: number): DayEnergy | null {
  let wattHours = 0;
  let known = 0;
  for (let i = 1; i < t.length; i++) {
    const length = (t[i] as number) - (t[i - 1] as number);
    if (length > hole) continue;
    wattHours += ((value[i - 1] as number) * length) / HOUR;
    known += length;
  }
  if (known < ENOUGH * DAY) return null;
  return { kilowattHours: ((wattHours / 1000) * DAY) / known, minimum: false };
}
