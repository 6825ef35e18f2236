import { defrostMayBeOn, smoothTrace } from '../cooler/index.ts';
import { type Instant, MINUTE } from '../units.ts';
import { within } from './column.ts';
import type { Room } from './room.ts';
import type { Column } from './snapshot.ts';

// Whether the unit stands still where in its cycle it always works: by where it was seen to start
// and to stop in this room. Sooner than waiting for the air to leave its cycle.

const OVER = 0.15; // K above where it mostly starts, ours: a probe's noise and step
const OVER_FOR = 2; // minutes, ours: the controller's own bulb lags the air
const RESTS = 6; // minutes, ours: some units wait three to five before they start again
const MID_CYCLE = 0.4; // of the swing above where it stops; and at least so many K. Ours
const MID_CYCLE_LEAST = 0.4; // K
const STOPPED_FOR = 3.75; // minutes, ours: as for a supply that is off

/** A probe that says one value over and over may hang: the unit is not judged by it. */
const STILL_FOR = 8; // minutes, ours
function standsStill({ t, value }: Column, now: number): boolean {
  const { from, to } = within({ t, value }, now - STILL_FOR * MINUTE, now);
  const last = value.slice(from, to);
  return last.length > 2 && last.every((each) => each === last[0]);
}

/**
 * Whether a unit idle since then ought to work: the air is above where it starts, or it stopped in
 * the middle of the way down. Only where start, stop and defrosts were learned, outside defrosts.
 *
 * Ours, from no source.
 */
export function missesItsTurn({ air, habits, now, supply }: Room, idleSince: Instant): boolean {
  const { calls, defrosts, top, bottom } = habits;
  if (air === null || calls === null || defrosts === null || !supply.on) return false;
  if (supply.since !== null && now - supply.since < RESTS * MINUTE) return false;
  if (defrostMayBeOn(defrosts, now)) return false;
  if (standsStill(air.column, now)) return false;
  const idle = now - idleSince;
  const { t, value } = smoothTrace(air.column, idleSince, now);
  const newest = value.filter((_, i) => (t[i] as number) > now - OVER_FOR * MINUTE);
  const over = newest.length > 0 && newest.every((each) => each > calls.startsAt + OVER);
  if (over && idle >= RESTS * MINUTE) return true;
  const middle = calls.stopsAt + Math.max(MID_CYCLE_LEAST, MID_CYCLE * (top - bottom));
  const early = value.length > 0 && value.every((each) => each > middle);
  return early && idle >= STOPPED_FOR * MINUTE;
}
