import { produceTime, warmingTime } from '../cooler/index.ts';
import {
  type Celsius,
  celsius,
  HOUR,
  type Hours,
  hours,
  type Instant,
  instant,
  MINUTE,
} from '../units.ts';
import { readAt, within } from './column.ts';
import { by, type How, put, when } from './how.ts';
import { feedHow, holeOf, type Room } from './room.ts';

// The produce follows the air, later.

/** Ours, from no source, until a probe in a crate shows it: the middle of a packed crate. */
export const PRODUCE_TAU = hours(2.5);

/**
 * Middle of a crate now: its own probe, else what the air of the last 48 hours has made of it. The
 * crate follows the air with a time constant of 2.5 hours, ours.
 *
 * Source: Newton's law of cooling, step by step from reading to reading.
 */
export function produceNow({ air, product, now }: Room): Celsius | null {
  if (product?.latest != null) return celsius(product.latest.value);
  if (air?.latest == null) return null;
  const { to } = within(air.column, Number.NEGATIVE_INFINITY, now);
  const hole = holeOf(air) * MINUTE;
  let produce: number | null = null;
  let before: { t: Instant; value: number } | null = null;
  for (let i = 0; i < to; i++) {
    const read = readAt(air.column, i);
    if (read === null) continue;
    if (produce === null || before === null) produce = read.value;
    else {
      // Through a hole the warmer of its ends is taken: a gap never looks safe.
      const long = read.t - before.t > hole;
      const along = long ? Math.max(before.value, read.value) : before.value;
      produce += (along - produce) * (1 - Math.exp((before.t - read.t) / (PRODUCE_TAU * HOUR)));
    }
    before = read;
  }
  return produce === null ? null : celsius(produce);
}

/** How the middle of a crate is known. */
export const produceHow = ({ product, air }: Room): How =>
  product?.latest != null
    ? feedHow(product)
    : by(
        'produceNow',
        put('time-constant-of-produce', PRODUCE_TAU, 'h'),
        put('room-air', air?.latest?.value ?? null, '°C'),
        when('readings-from', air?.column.t[0] ?? null),
        ...feedHow(air).inputs,
      );

/**
 * When the produce reaches the limit if the cooling stays as it is now; null for never or not
 * known. With nothing known of outside, the air is taken to stay as warm as it is.
 */
export function produceAtLimit(
  { air, now, limit, warmestAhead }: Room,
  produce: Celsius | null,
  tauHours: Hours,
): Instant | null {
  if (produce === null || air?.latest == null) return null;
  const inside = air.latest.value;
  const after =
    warmestAhead === null
      ? warmingTime({ inside: produce, outside: inside, target: limit, tauHours: PRODUCE_TAU })
      : produceTime({
          outside: warmestAhead,
          air: inside,
          produce,
          tauHours,
          produceTauHours: PRODUCE_TAU,
          limit,
        });
  return after === null ? null : instant(now + after * HOUR);
}
