import { HOUR, type Instant, MINUTE } from '../units.ts';
import { highest, readAt, since, within } from './column.ts';
import { coverage, ENOUGH, type Feed, holeOf, OUT_OF_CYCLE, type Room } from './room.ts';

// Whether the door stands open: by its contact, else by how steeply the air rose.

export type DoorSign = {
  readonly open: boolean | null;
  readonly since: Instant | null;
  readonly by: 'contact' | 'rise';
  /** K in 5 or 10 minutes, when judged by the rise. */
  readonly rise: number | null;
};

export const OPEN_FOR = 5; // minutes, common practice
export const STEEP = 1; // K in 5 minutes, common practice: an open door is 5 to 20 times as steep as a stopped unit
const VERY_STEEP = 1.5; // K in 5 minutes, ours: no defrost warms the air like this
const SOON = 10; // minutes, common practice: not a short opening
const LATER = 20; // minutes, ours: longer than a defrost of 18
const FALLEN = 0.5; // K below the peak it is on its way back. Ours
const FALLEN_ASKED = 1.5; // K, the same once the task stands

/**
 * Whether the door stands open: its contact says so for 5 minutes; without a contact, the air rose
 * by more than 1 K in 5 minutes and does not come back.
 *
 * Source: common practice, no source; how long to wait before saying so is ours.
 */
export function doorSign(room: Room, standing: boolean): DoorSign {
  const { door, now } = room;
  if (door?.latest == null) return riseSign(room, standing);
  const opened = since(door.column, now, (value) => value > 0.5, HOUR / MINUTE);
  const open = opened !== null && now - opened >= OPEN_FOR * MINUTE;
  return { open, since: opened, by: 'contact', rise: null };
}

function riseSign({ air, now, setPoint }: Room, standing: boolean): DoorSign {
  const cannotSay: DoorSign = { open: null, since: null, by: 'rise', rise: null };
  if (air?.latest == null) return cannotSay;
  const high = since(air.column, now, (value) => value > setPoint + OUT_OF_CYCLE, holeOf(air));
  if (high === null) return { ...cannotSay, open: false };

  const span = air.every <= 2.5 ? 5 : 10; // minutes
  const rise = steepest(air, high, span);
  const peak = highest(air.column, high, now)?.value ?? air.latest.value;
  const stays = peak - air.latest.value < (standing ? FALLEN_ASKED : FALLEN);
  const wait = rise >= (VERY_STEEP * span) / 5 ? SOON : LATER;
  const open = rise >= STEEP && stays && now - high >= wait * MINUTE;
  // What went before the rise has to have been seen, or "no door" would be a guess.
  const seen = coverage(air, now, (now - high) / MINUTE + 2 * span) >= ENOUGH;
  return { open: open || seen ? open : null, since: high, by: 'rise', rise };
}

/** Largest rise within `span` minutes around the moment the air left its cycle. */
function steepest({ column }: Feed, high: Instant, span: number): number {
  const { from, to } = within(column, high - span * MINUTE, high + span * MINUTE);
  let most = 0;
  for (let i = from; i < to; i++) {
    for (let j = i + 1; j < to; j++) {
      const a = readAt(column, i);
      const b = readAt(column, j);
      if (a === null || b === null || b.t - a.t > span * MINUTE) break;
      most = Math.max(most, b.value - a.value);
    }
  }
  return most;
}
