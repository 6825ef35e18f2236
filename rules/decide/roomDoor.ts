import { HOUR, type Instant, MINUTE } from '../units.ts';
import { since } from './column.ts';
import type { Room } from './room.ts';
import type { AirSign } from './roomAir.ts';

// Whether the door stands open: by its contact, else by how steeply the air rose and that it stays.

export type DoorSign = {
  readonly open: boolean | null;
  readonly since: Instant | null;
  readonly by: 'contact' | 'rise';
  /** K in five minutes, when judged by the rise. */
  readonly rise: number | null;
};

/** Down from its peak by this, what was open was shut again. */
export const DIP = 0.4; // K, more than a probe's noise. Ours
/** An opening that was shut again lifts a room that nothing cools by less than this. */
const FAR = 2.5; // K above the cycle. Ours, tried on simulated rooms
/** A defrost that does not end is steep too, but less than a door by far. */
const DOOR_STEEP = 2; // times what is called steep. Ours, tried on simulated rooms
export const OPEN_FOR = 5; // minutes, common practice
const LOOK_GIVE = 0.25; // minutes: the look that a contact asks for comes some seconds early

/**
 * Whether the door stands open: its contact says so for 5 minutes; without a contact, the air left
 * its cycle as steeply as only an open door lets it and makes no way back.
 *
 * Source: common practice, no source; how long to wait without a contact is learned here.
 */
export function doorSign({ door, now, habits }: Room, air: AirSign): DoorSign {
  if (door?.latest != null) {
    const opened = since(door.column, now, (value) => value > 0.5, HOUR / MINUTE);
    const open = opened !== null && now - opened >= (OPEN_FOR - LOOK_GIVE) * MINUTE;
    return { open, since: opened, by: 'contact', rise: null };
  }
  const { above, trouble, known } = air;
  if (!known) return { open: null, since: null, by: 'rise', rise: null };
  const open = trouble === 'stalled' && doorLike(above, habits);
  return { open, since: above?.since ?? null, by: 'rise', rise: above?.steepest ?? null };
}

/** Whether the air went up as only an open door lets it, far, and has not come down since. */
export const doorLike = (above: AirSign['above'], habits: Room['habits']): boolean =>
  above !== null &&
  above.steepest >= DOOR_STEEP * habits.steep &&
  above.dip < DIP &&
  above.peak >= habits.line + FAR;
