import { warmingTime } from '../cooler/index.ts';
import { type Celsius, type Hours, type Instant, MINUTE } from '../units.ts';
import { since } from './column.ts';
import { by, type How, put } from './how.ts';
import { type Look, outsideNow, stands } from './look.ts';
import { produceAtLimit, produceNow } from './produce.ts';
import { feedHow, holeOf, type Room, recovering, roomOf } from './room.ts';
import { type DoorSign, doorSign } from './roomDoor.ts';
import { type PowerSign, powerSign } from './roomPower.ts';
import { type DriftSign, driftSign, longRise } from './roomRise.ts';
import { timeConstant } from './roomTau.ts';
import type { CoolRoomNow, PlaceNow } from './snapshot.ts';

// All that is known of one cool room, for its description and its tasks alike.

export type Signs = {
  readonly room: Room;
  readonly door: DoorSign;
  readonly power: PowerSign;
  readonly drift: DriftSign;
  readonly rises: boolean;
  readonly cause: CoolRoomNow['cause'];
  readonly state: CoolRoomNow['state'];
  /** Start of the time above the limit that still goes on. */
  readonly aboveSince: Instant | null;
  readonly recovering: boolean;
  readonly tauHours: Hours;
  /** Until the air reaches the limit if the cooling stopped now; null for never or not known. */
  readonly hoursToLimit: Hours | null;
  readonly produce: Celsius | null;
  /** When the produce reaches the limit as things go; null for never or not known. */
  readonly produceAt: Instant | null;
};

// Ours, from no source: a defrost or a delivery may lift the air above its limit for a while.
const SOON_BACK = 30; // minutes
const TOO_LONG = 60; // minutes, whichever way it goes

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
  const door = doorSign(room, stands(look, 'shut-door', place.id));
  const power = powerSign(room);
  const drift = driftSign(room, stands(look, 'see-to-unit', place.id));
  const rises = power.stopped === null && longRise(room);
  const cause = causeOf(door, power, drift, rises);

  const { air, now, limit } = room;
  const latest = air?.latest ?? null;
  const aboveSince =
    air === null || latest === null ? null : since(air.column, now, (v) => v > limit, holeOf(air));
  const back = recovering(room);
  const tauHours = timeConstant(room, outsideNow(look.snapshot)?.column ?? null);
  const produce = produceNow(room);
  return {
    room,
    door,
    power,
    drift,
    rises,
    cause,
    state: stateOf(room, aboveSince, back, cause),
    aboveSince,
    recovering: back,
    tauHours,
    hoursToLimit: airToLimit(room, tauHours),
    produce,
    produceAt: produceAtLimit(room, produce, tauHours),
  };
}

function causeOf(door: DoorSign, power: PowerSign, drift: DriftSign, rises: boolean) {
  if (power.stopped === 'power' || power.stopped === 'unit') return power.stopped;
  if (door.open === true) return 'door';
  // A unit that runs, or whose power nobody measures, and still the cycle creeps up.
  if (drift.drifts === true) return power.stopped === false ? 'unit' : 'unclear';
  return rises ? 'unclear' : null;
}

function stateOf(
  { air, now }: Room,
  above: Instant | null,
  back: boolean,
  cause: CoolRoomNow['cause'],
): CoolRoomNow['state'] {
  if (air?.latest == null) return 'unknown';
  if (above !== null) {
    const minutes = (now - above) / MINUTE;
    const lasting = minutes >= TOO_LONG || (minutes >= SOON_BACK && !back);
    return lasting || (cause !== null && !back) ? 'warm' : 'warming';
  }
  return cause === null ? 'holding' : 'warming';
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

function airToLimit({ air, limit, warmestAhead }: Room, tauHours: Hours): Hours | null {
  if (air?.latest == null || warmestAhead === null) return null;
  return warmingTime({
    inside: air.latest.value,
    outside: warmestAhead,
    target: limit,
    tauHours,
  });
}
