import { fitTimeConstant, STRAIGHT_ENOUGH } from '../cooler/index.ts';
import { median } from '../statistics/index.ts';
import { type Celsius, celsius, type Hours, hours, type Instant, MINUTE } from '../units.ts';
import { readAt, within } from './column.ts';
import type { Room } from './room.ts';
import { offRuns } from './roomPower.ts';
import type { Column } from './snapshot.ts';

// How fast this room warms, learned from the times its unit stood still.

/** Ours, from no source, until the room has shown its own: a walk-in room half full. */
export const USUAL_TAU = hours(6);
// Common practice, no source: what a stretch must be like to be learned from.
const LEAST_MINUTES = 30;
const LEAST_CHANGE = 2; // K
const FEWEST = 3; // readings
const SETTLING = 10; // minutes left out at the start
const STEADY = 2; // K outside may move
const LAST_FITS = 5;
const SLOWEST = 200; // h, ours: beyond it the fit says nothing
const FASTEST = 0.2; // h, ours: an open door, not a room

/**
 * Hours in which the room comes 63 % of the way to the outside temperature once its unit stands
 * still: the middle of the last five stretches from which it could be learned, else 6 h.
 *
 * Source: Newton's law of cooling, fitted to the room's own record; what a stretch must be like is
 * common practice, no source, and the 6 h are ours.
 */
export function timeConstant(room: Room, outside: Column | null): Hours {
  const { power, air, now } = room;
  if (power === null || air === null || outside === null) return USUAL_TAU;
  const fits = offRuns(power, now)
    .filter(({ from, to }) => to - from >= LEAST_MINUTES * MINUTE)
    .map(({ from, to }) => fitOf(room, air.column, outside, from, to))
    .filter((tau) => tau !== null);
  return fits.length === 0 ? USUAL_TAU : hours(median(fits.slice(-LAST_FITS)));
}

function fitOf(
  room: Room,
  air: Column,
  outside: Column,
  from: Instant,
  to: Instant,
): number | null {
  if (doorOpened(room, from, to)) return null;
  const out = steadyMean(outside, from, to);
  const { from: first, to: end } = within(air, from + SETTLING * MINUTE, to);
  const readings: { t: Instant; value: Celsius }[] = [];
  for (let i = first; i < end; i++) {
    const read = readAt(air, i);
    if (out === null || read === null || read.value >= out) return null;
    readings.push({ t: read.t, value: celsius(read.value) });
  }
  const start = readings[0];
  const last = readings.at(-1);
  if (out === null || start === undefined || last === undefined) return null;
  if (readings.length < FEWEST || last.value - start.value < LEAST_CHANGE) return null;
  const fit = fitTimeConstant(readings, out);
  if (fit.r2 < STRAIGHT_ENOUGH) return null;
  return fit.tauHours >= FASTEST && fit.tauHours <= SLOWEST ? fit.tauHours : null;
}

function doorOpened({ door }: Room, from: Instant, to: Instant): boolean {
  if (door === null) return false;
  const window = within(door.column, from, to);
  for (let i = window.from; i < window.to; i++) {
    if ((door.column.value[i] ?? 0) > 0.5) return true;
  }
  return false;
}

function steadyMean(outside: Column, from: Instant, to: Instant): Celsius | null {
  const window = within(outside, from, to);
  let sum = 0;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = window.from; i < window.to; i++) {
    const value = outside.value[i] ?? Number.NaN;
    sum += value;
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  const n = window.to - window.from;
  return n > 0 && high - low <= STEADY ? celsius(sum / n) : null;
}
