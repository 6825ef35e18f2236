import type { Celsius, Instant } from '../units.ts';
import { celsius, instant, MINUTE } from '../units.ts';
import type { AirReading, Column } from './snapshot.ts';

// Windows over 48 hours of readings, found by halving and read in place: with sixty probes and a
// reading every five minutes, copying them for each rule would cost more than the rules.

export type Read = { readonly t: Instant; readonly value: number };
/** Half-open range of indices, [from, to). */
export type Window = { readonly from: number; readonly to: number };

/** First index of a rising row of instants that is not before `at`. */
export function firstAt(length: number, instantOf: (i: number) => number, at: number): number {
  let low = 0;
  let high = length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (instantOf(middle) < at) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The readings from `from` up to and including `to`. */
export function within({ t }: Column, from: number, to: number): Window {
  const at = (i: number) => t[i] ?? Number.POSITIVE_INFINITY;
  return { from: firstAt(t.length, at, from), to: firstAt(t.length, at, to + 1) };
}

export function readAt(column: Column, i: number): Read | null {
  const t = column.t[i];
  const value = column.value[i];
  return t === undefined || value === undefined ? null : { t, value };
}

/** The newest reading that is not from the future. */
export function newest(column: Column | undefined, now: Instant): Read | null {
  if (column === undefined) return null;
  return readAt(column, within(column, Number.NEGATIVE_INFINITY, now).to - 1);
}

/** The newest reading, unless it is older than `most` minutes. */
export function fresh(column: Column | undefined, now: Instant, most: number): Read | null {
  const read = newest(column, now);
  return read !== null && now - read.t <= most * MINUTE ? read : null;
}

export function freshAir(
  air: readonly AirReading[],
  now: Instant,
  most: number,
): AirReading | null {
  const at = (i: number) => air[i]?.t ?? Number.POSITIVE_INFINITY;
  const read = air[firstAt(air.length, at, now + 1) - 1];
  return read !== undefined && now - read.t <= most * MINUTE ? read : null;
}

function extreme(column: Column, from: number, to: number, sign: 1 | -1): Read | null {
  const window = within(column, from, to);
  let best: Read | null = null;
  for (let i = window.from; i < window.to; i++) {
    const value = column.value[i];
    const t = column.t[i];
    if (value === undefined || t === undefined) continue;
    if (best === null || sign * value > sign * best.value) best = { t, value };
  }
  return best;
}
export const lowest = (column: Column, from: number, to: number) => extreme(column, from, to, -1);
export const highest = (column: Column, from: number, to: number) => extreme(column, from, to, 1);

const AROUND = 10 * MINUTE; // FAO 2005 asks for one reading; a mean quiets the probe. Ours
const AT_MOST = 35 * MINUTE; // ours, from no source: an hourly station still has a neighbour

/** Mean of the readings within 10 minutes of `at`, else the nearest within 35, else null. */
export function around(column: Column, at: number, now: Instant): Celsius | null {
  const close = within(column, at - AROUND, Math.min(at + AROUND, now));
  if (close.to > close.from) {
    let sum = 0;
    for (let i = close.from; i < close.to; i++) sum += column.value[i] ?? 0;
    return celsius(sum / (close.to - close.from));
  }
  const wide = within(column, at - AT_MOST, Math.min(at + AT_MOST, now));
  let best: Read | null = null;
  for (let i = wide.from; i < wide.to; i++) {
    const read = readAt(column, i);
    if (read === null) continue;
    if (best === null || Math.abs(read.t - at) < Math.abs(best.t - at)) best = read;
  }
  return best === null ? null : celsius(best.value);
}

/**
 * Start of the stretch, ending with the newest reading, in which every reading passes `holds`.
 * A hole longer than `gap` minutes ends it: nobody knows what was in it. null when the newest
 * reading fails.
 *
 * Source: counted on the readings; how long a hole may be is ours.
 */
export function since(
  column: Column,
  now: Instant,
  holds: (value: number) => boolean,
  gap: number,
): Instant | null {
  let start: Instant | null = null;
  for (let i = within(column, Number.NEGATIVE_INFINITY, now).to - 1; i >= 0; i--) {
    const read = readAt(column, i);
    if (read === null || !holds(read.value)) break;
    if (start !== null && start - read.t > gap * MINUTE) break;
    start = instant(read.t);
  }
  return start;
}
