import { fitTimeConstant } from '../cooler/index.ts';
import { percentile } from '../statistics/index.ts';
import { type Instant, MINUTE } from '../units.ts';
import { type Read, readAt, since, within } from './column.ts';
import { coverage, ENOUGH, holeOf, OUT_OF_CYCLE, type Room } from './room.ts';

// What the temperature alone tells: the bottom of the cycle creeping up, or one long rise.

// Method sheet 1.3, rules A and B: tried on a simulated room, to be fitted to the site.
export const DRIFT_MARGIN = 0.7; // K
const DRIFT_ASKED = 0.5; // K, ours: the same once the task stands
export const QUICK = 120; // minutes
export const SURE = 180; // minutes

// A normal rise is under half an hour and a defrost adds 18 minutes. Ours.
const LONG_RISE = 50; // minutes
const LEAST_RISE = 1; // K, ours
const ENOUGH_TO_FIT = 2; // K, method sheet 2.2
const WOBBLE = 0.3; // K a rising room may dip by: the probe's noise. Ours
// Method sheet asks 0.98 of a clean record; a probe's noise of 0.1 K costs that much in an hour. Ours
const STRAIGHT = 0.95;

/** Bottom of the cycle (10th percentile) above set point, K; null under 80 % of the samples. */
export function bottomAbove({ air, now, setPoint }: Room, minutes: number): number | null {
  if (air?.latest == null || coverage(air, now, minutes) < ENOUGH) return null;
  const { from, to } = within(air.column, now - minutes * MINUTE + 1, now);
  return percentile(air.column.value.slice(from, to), 0.1) - setPoint;
}

export type DriftSign = {
  /** null: not enough samples in either window. */
  readonly drifts: boolean | null;
  /** By the longer window too. */
  readonly sure: boolean;
  readonly bottom: number | null;
  /** Since when no reading has come back to the cycle's bottom; null when one just has. */
  readonly since: Instant | null;
};

export function driftSign(room: Room, standing: boolean): DriftSign {
  const margin = standing ? DRIFT_ASKED : DRIFT_MARGIN;
  const quick = bottomAbove(room, QUICK);
  const slow = bottomAbove(room, SURE);
  const bottom = quick ?? slow;
  const sure = slow !== null && slow > DRIFT_MARGIN;
  const { air, now, setPoint } = room;
  const began =
    air === null ? null : since(air.column, now, (v) => v > setPoint + DRIFT_ASKED, holeOf(air));
  return { drifts: bottom === null ? null : bottom > margin, sure, bottom, since: began };
}

/** One rise without a break, longer than any cycle and defrost: the cold is not coming. */
export function longRise(room: Room): boolean {
  const { air, now, setPoint, outside } = room;
  if (air?.latest == null || air.latest.value <= setPoint + OUT_OF_CYCLE) return false;
  if (coverage(air, now, LONG_RISE) < ENOUGH) return false;
  const { from, to } = within(air.column, now - LONG_RISE * MINUTE, now);
  const readings: Read[] = [];
  let top = Number.NEGATIVE_INFINITY;
  for (let i = from; i < to; i++) {
    const read = readAt(air.column, i);
    if (read === null || read.value < top - WOBBLE) return false;
    top = Math.max(top, read.value);
    readings.push(read);
  }
  const first = readings[0];
  if (first === undefined || air.latest.value - first.value < LEAST_RISE) return false;
  // Level and then a jump is a door or a delivery: the first half has to have risen too.
  const middle = readings[readings.length >> 1] ?? first;
  if (middle.value - first.value < (air.latest.value - first.value) / 4) return false;
  if (outside === null || readings.some(({ value }) => value >= outside)) return true;
  // Of a small rise the probe's own steps are too large a part to call it crooked.
  if (readings.length < 3 || air.latest.value - first.value < ENOUGH_TO_FIT) return true;
  return fitTimeConstant(readings, outside).r2 >= STRAIGHT;
}
