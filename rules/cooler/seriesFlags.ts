import { expectRange } from '../expectRange.ts';
import type { MaybeTemperature } from '../heat/index.ts';
import { median } from '../statistics/index.ts';
import { HOUR, type Instant, MINUTE } from '../units.ts';

// What is wrong with a probe by how it goes on. All limits are common practice, no source.

const STUCK = 6 * HOUR; // while outside or the compressor changed
const STUCK_CYCLING = 60 * MINUTE; // in a room that cycles
const SPIKE = 3; // K from the middle of its five neighbours
const AGREE = 0.5; // K between those neighbours
const NEIGHBOURS = 5;
const AIR_SHUT = 3; // K/min with the door shut
const AIR_EVER = 8; // K/min
const PRODUCE = 1; // K/min
const WET = 99; // %
const WET_FOR = 12 * HOUR;
const MISSED = 3; // reports

/**
 * Whether a probe sends the very same raw value for 6 hours although outside or the compressor
 * changed, or for 60 minutes in a room that cycles. null when that long is not on record, or
 * nothing changed that it could have followed.
 */
export function isStuck(
  raw: readonly MaybeTemperature[],
  now: Instant,
  { cycles, changed }: { readonly cycles: boolean; readonly changed: boolean },
): boolean | null {
  const span = cycles ? STUCK_CYCLING : STUCK;
  const window = raw.filter(({ t, value }) => t >= now - span && t <= now && value !== null);
  const first = window[0];
  if (first === undefined) return null;
  if (window.some(({ value }) => value !== first.value)) return false;
  // The value has to have stood at the window's start, by the reading before or at it.
  const earlier = raw.findLast(({ t, value }) => t <= now - span && value !== null);
  if (earlier === undefined || !(cycles || changed)) return null;
  return earlier.value === first.value && window.length >= 2;
}

/**
 * Whether a value stands out: more than 3 K from the median of its five neighbours, while these
 * agree within 0.5 K. Hold it out and keep the raw value. null without five known neighbours.
 * @throws RangeError for a value outside -300..300 °C
 */
export function isSpike(
  value: number | null,
  neighbours: readonly (number | null)[],
): boolean | null {
  const known = neighbours.filter((neighbour) => neighbour !== null);
  if (value === null || known.length < NEIGHBOURS) return null;
  expectRange('temperature', value, -300, 300, '°C');
  const agree = Math.max(...known) - Math.min(...known) <= AGREE;
  return agree && Math.abs(value - median(known)) > SPIKE;
}

/**
 * Whether a probe moved faster than what it measures can: air 3 K/min with the door shut and 8
 * K/min ever, the middle of a crate 1 K/min. null for an unknown value, or no time between.
 * @param doorShut null for not known, which allows what an open door does
 */
export function isImpossibleRate(
  before: MaybeTemperature,
  after: MaybeTemperature,
  { of, doorShut = null }: { readonly of: 'air' | 'produce'; readonly doorShut?: boolean | null },
): boolean | null {
  if (before.value === null || after.value === null || after.t <= before.t) return null;
  const rate = (Math.abs(after.value - before.value) * MINUTE) / (after.t - before.t);
  return rate > (of === 'produce' ? PRODUCE : doorShut === true ? AIR_SHUT : AIR_EVER);
}

/**
 * Whether a humidity probe may be saturated: 99 % and more for 12 hours. It says that the probe has
 * to be looked at, and nothing of the leaves. null when that long is not on record.
 */
export function isSaturated(humidity: readonly MaybeTemperature[], now: Instant): boolean | null {
  const window = humidity.filter(
    ({ t, value }) => t >= now - WET_FOR && t <= now && value !== null,
  );
  if (window.some(({ value }) => (value ?? 0) < WET)) return false;
  const earlier = humidity.findLast(({ t, value }) => t <= now - WET_FOR && value !== null);
  return earlier !== undefined && (earlier.value ?? 0) >= WET && window.length >= 2 ? true : null;
}

/** Whether a probe's link or battery asks for a look: three reports missed, or its supply low. */
export function isLinkWeak(
  heard: Instant | null,
  now: Instant,
  {
    everyMinutes,
    supplyLow = false,
  }: { readonly everyMinutes: number; readonly supplyLow?: boolean },
): boolean | null {
  expectRange('report time', everyMinutes, 0.01, 10_080, 'min');
  if (supplyLow) return true;
  return heard === null ? null : now - heard > MISSED * everyMinutes * MINUTE;
}
