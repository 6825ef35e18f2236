import {
  type CauseFinding,
  cycleBottom,
  DRIFT_WINDOWS,
  type HoldOver,
  holdOver,
  roomCauses,
  type Trouble,
} from '../cooler/index.ts';
import { type Celsius, celsius, type Hours, type Instant, instant, MINUTE } from '../units.ts';
import { readAt, since, within } from './column.ts';
import { by, type How, put } from './how.ts';
import { type Look, stands } from './look.ts';
import { produceAtLimit, produceNow } from './produce.ts';
import { feedHow, holeOf, type Room, recovering, roomOf } from './room.ts';
import { type AirSign, airSign } from './roomAir.ts';
import { type DoorSign, doorLike, doorSign } from './roomDoor.ts';
import { type PowerSign, powerSign } from './roomPower.ts';
import type { CoolRoomNow, PlaceNow } from './snapshot.ts';

// All that is known of one cool room, for its description and its tasks alike.

export type Signs = {
  readonly room: Room;
  readonly air: AirSign;
  readonly door: DoorSign;
  readonly power: PowerSign;
  /** Bottom of the cycle above set point over the last two hours, K; null for too few readings. */
  readonly drift: number | null;
  readonly trouble: Trouble | null;
  /** Since when the trouble shows; null without one. */
  readonly since: Instant | null;
  /** Whether it may wake somebody. */
  readonly wakes: boolean;
  readonly why: CauseFinding | null;
  readonly cause: CoolRoomNow['cause'];
  readonly state: CoolRoomNow['state'];
  /** Start of the time above the limit that still goes on. */
  readonly aboveSince: Instant | null;
  readonly recovering: boolean;
  readonly hold: HoldOver;
  readonly tauHours: Hours;
  /** Until the air reaches the limit if the cooling stopped now; null for never or not known. */
  readonly hoursToLimit: Hours | null;
  readonly produce: Celsius | null;
  /** When the produce reaches the limit as things go; null for never or not known. */
  readonly produceAt: Instant | null;
};

// Ours, from no source: a defrost or a delivery may lift the air above its limit for a while.
const SOON_BACK = 30; // minutes
const TOLD_FOR = 10; // minutes, when it is known that something is wrong
const TOO_LONG = 60; // minutes, whichever way it goes
const STILL = 0.6; // of the patience, once a task stands. Ours
const STARVED_FOR = 4; // minutes, ours

// Four rules and the screen read the same room of the same look.
const seen = new WeakMap<Look, Map<string, Signs>>();

/** @throws RangeError for a place that is no cool room */
export function signsOf(look: Look, place: PlaceNow): Signs {
  const known = seen.get(look) ?? new Map<string, Signs>();
  seen.set(look, known);
  const signs = known.get(place.id) ?? read(look, place);
  known.set(place.id, signs);
  return signs;
}

function read(look: Look, place: PlaceNow): Signs {
  const room = roomOf(look, place);
  const air = airSign(room);
  const door = doorSign(room, air);
  const power = powerSign(room, air);
  // A contact says itself when the door is shut.
  const standing =
    stands(look, 'see-to-unit', place.id) ||
    (door.by === 'rise' && stands(look, 'shut-door', place.id));
  const worst = worstOf(room, air, door, power, standing);
  const why =
    worst.trouble === null
      ? null
      : roomCauses({
          trouble: worst.trouble,
          steep: air.above?.steep === true,
          dipped: !doorLike(air.above, room.habits),
          doorOpen: door.by === 'contact' ? door.open : null,
          supplyOn: supplyNow(power),
          nothingDrawn: power.watts === 0,
          cools: coolsNow(power),
        });
  const cause = why === null ? null : (why.cause ?? 'unclear');
  const { now, limit } = room;
  const latest = room.air?.latest ?? null;
  const aboveSince =
    room.air === null || latest === null
      ? null
      : since(room.air.column, now, (v) => v > limit, holeOf(room.air));
  const back = recovering(room);
  const hold = holdOver(
    room.habits.tauFits,
    { inside: latest?.value ?? null, outside: room.warmestAhead, limit },
    begun(power, now) ? null : (place.coolRoom?.filled?.swift ?? null),
  );
  const { tauHours } = hold;
  const produce = produceNow(room);
  return {
    ...{
      room,
      air,
      door,
      power,
      drift: driftOf(room),
      ...worst,
      why,
      cause,
      aboveSince,
      recovering: back,
      hold,
    },
    state: stateOf(room, air, aboveSince, back, cause),
    tauHours,
    hoursToLimit: hold.toLimit,
    produce,
    produceAt: produceAtLimit(room, produce, tauHours),
  };
}

const BEGINNING = 60; // minutes of a stop after which its quick beginning is over. Ours

const begun = ({ offSince }: PowerSign, now: Instant) =>
  offSince !== null && now - offSince >= BEGINNING * MINUTE;

function driftOf({ air, now, setPoint }: Room): number | null {
  if (air?.latest == null) return null;
  const window = { windowMinutes: DRIFT_WINDOWS.A, everyMinutes: air.every };
  const { from, to } = within(air.column, now - DRIFT_WINDOWS.A * MINUTE + 1, now);
  const readings = [];
  for (let i = from; i < to; i++) {
    const read = readAt(air.column, i);
    if (read !== null) readings.push({ t: instant(read.t), value: celsius(read.value) });
  }
  const bottom = cycleBottom(readings, now, window);
  return bottom === null ? null : bottom - setPoint;
}

function supplyNow({ watts, stopped, certain }: PowerSign): boolean | null {
  if (watts === null || (stopped === 'power' && !certain)) return null;
  return stopped !== 'power';
}

function coolsNow({ watts, stopped, coil }: PowerSign): boolean | null {
  if (stopped !== null && stopped !== false) return false;
  if (watts !== null) return watts >= 100; // W, ours: a compressor and no controller
  return coil?.cools ?? null;
}

type Worst = Pick<Signs, 'trouble' | 'since' | 'wakes'>;

/** The rule that knows most speaks: a contact or a meter before the coil, and that before the air. */
function worstOf(
  { now }: Room,
  air: AirSign,
  door: DoorSign,
  power: PowerSign,
  standing: boolean,
): Worst {
  const wakes = true;
  if (power.stopped === 'power' && power.certain) {
    return { trouble: 'supply-off', since: power.offSince, wakes };
  }
  if (door.by === 'contact' && door.open) return { trouble: 'door-open', since: door.since, wakes };
  if (power.stopped !== null && power.stopped !== false) {
    return { trouble: 'not-cooling', since: power.offSince, wakes };
  }
  const starved = power.coil?.starvedSince ?? null;
  if (starved !== null && now - starved >= STARVED_FOR * MINUTE) {
    return { trouble: 'coil-starved', since: starved, wakes };
  }
  if (air.trouble !== null) return { trouble: air.trouble, since: air.since, wakes: air.wakes };
  // Once asked, it stays asked until the air is on its way back or in its cycle again.
  const still = air.above !== null && air.stalledFor >= STILL * air.patience;
  if (standing && air.above !== null && still && !air.defrost) {
    return { trouble: 'stalled', since: air.above.since, wakes };
  }
  return { trouble: null, since: null, wakes: false };
}

function stateOf(
  { air, now, habits }: Room,
  { above, pullDown }: AirSign,
  over: Instant | null,
  back: boolean,
  cause: CoolRoomNow['cause'],
): CoolRoomNow['state'] {
  if (air?.latest == null) return 'unknown';
  if (over !== null) {
    const minutes = (now - over) / MINUTE;
    const lasting = minutes >= TOO_LONG || (minutes >= SOON_BACK && !back && pullDown === null);
    const told = cause !== null && cause !== 'door' && !back;
    return lasting || (told && minutes >= TOLD_FOR) ? 'warm' : 'warming';
  }
  if (cause !== null) return 'warming';
  return above !== null && !above.falling && air.latest.value > habits.line ? 'warming' : 'holding';
}

/** How the time until the air reaches the limit came about. */
export const limitHow = ({ room, tauHours }: Signs): How =>
  by(
    'warmingTime',
    put('room-air', room.air?.latest?.value ?? null, '°C'),
    put('warmest-outside-ahead', room.warmestAhead, '°C'),
    put('limit', room.limit, '°C'),
    put('time-constant', tauHours, 'h'),
    ...feedHow(room.air).inputs,
  );
