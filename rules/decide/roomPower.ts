import { type CoilSign, coilSays, IDLE, offSpans } from '../cooler/index.ts';
import { percentile } from '../statistics/index.ts';
import { type Instant, MINUTE } from '../units.ts';
import { since, within } from './column.ts';
import { by, type How, put, when } from './how.ts';
import { type Feed, holeOf, type Room } from './room.ts';
import type { AirSign } from './roomAir.ts';
import { missesItsTurn } from './roomCalls.ts';

// Whether the unit cools when it should, by the power it draws or by how cold its coil is.

const USUAL_OFF = 40; // minutes, ours, until this room's own pauses are known
const LEAST_OFF = 20; // minutes, ours
const LONGEST_PAUSE = 120; // minutes: a longer one was an outage, not a pause. Ours
const PAUSES_TO_LEARN = 3; // ours
const WARM_FOR = 8; // minutes above the cycle and nothing cools: common practice says ten, less the look's step
const UNLEARNED = 20; // minutes, ours: longer than a defrost of 18, while none is learned
const NEAR = 0.25; // K below the line, ours: a cycle's top and a probe's noise
const SUPPLY_HOLD = 3.75; // minutes, ours: common practice holds five; a look follows within a quarter
const STANDBY_READINGS = 10; // ours
const COIL_WARM_FOR = 5; // minutes, ours

export type PowerSign = {
  /** null: no probe tells, or it is silent. */
  readonly stopped: 'unit' | 'power' | 'either' | false | null;
  readonly watts: number | null;
  readonly offSince: Instant | null;
  /** Minutes of a normal pause here. */
  readonly pause: number;
  readonly coil: CoilSign | null;
  /** Whether a meter tells an outage from a pause, for a supply that is off. */
  readonly certain: boolean;
};

/**
 * Whether the compressor stands still when it should run, and whether the unit or its supply is why.
 * It should run once the air is above its cycle, but for a defrost; a pause is normal up to the
 * longest of this room's own.
 *
 * Source: 10 W and a hold-off of some minutes are common practice, no source; the rest is ours.
 */
export function powerSign(room: Room, air: AirSign): PowerSign {
  const { power, coil, now, habits } = room;
  const cold =
    coil?.latest == null || room.air === null
      ? null
      : coilSays(tail(coil, now), tail(room.air, now), habits.coil);
  const none = { watts: null, offSince: null, pause: USUAL_OFF, coil: cold, certain: false };
  const late = shouldRun(room, air);
  if (power?.latest == null) {
    if (cold === null) return { ...none, stopped: null };
    const since = cold.idleSince;
    const idle = since !== null && now - since >= COIL_WARM_FOR * MINUTE;
    const stopped = (late && idle) || (since !== null && missesItsTurn(room, since));
    return { ...none, stopped: stopped ? 'either' : false, offSince: since };
  }
  const watts = power.latest.value;
  const pause = usualPause(room, power);
  const offSince = since(power.column, now, (value) => value < IDLE, holeOf(power));
  const told = { watts, offSince, pause, coil: cold, certain: false };
  if (offSince === null) return { ...told, stopped: false };
  if (room.supply.on && supplyGone(room, power, offSince)) {
    return { ...told, stopped: 'power', certain: true };
  }
  if (!late && !missesItsTurn(room, offSince)) return { ...told, stopped: false };
  return { ...told, stopped: watts > 0 ? 'unit' : 'power' };
}

const tail = ({ column }: Feed, now: Instant) => {
  const { from, to } = within(column, now - 2 * 60 * MINUTE, now);
  return { t: column.t.slice(from, to), value: column.value.slice(from, to) };
};

/** Above the cycle for some minutes, and no defrost is why. */
function shouldRun({ now, supply, habits, air }: Room, { above, defrost }: AirSign): boolean {
  if (!supply.on || above === null || defrost || above.falling) return false;
  if (habits.learned || air === null) return now - above.since >= WARM_FOR * MINUTE;
  const warm = since(air.column, now, (value) => value > habits.line - NEAR, holeOf(air));
  return warm !== null && now - warm >= UNLEARNED * MINUTE;
}

/** How the time that the cooling has been off came about. */
export const offHow = ({ power, now }: Room, { watts, offSince, pause }: PowerSign): How =>
  by(
    'powerSign',
    put('probe', power?.probe ?? null),
    put('room-power', watts, 'W'),
    when('off-since', offSince),
    when('now', now),
    put('usual-pause', pause, 'min'),
  );

function usualPause({ habits, now }: Room, power: Feed): number {
  if (habits.watts !== null) return Math.max(LEAST_OFF, habits.watts.pause + power.every);
  const { to } = within(power.column, Number.NEGATIVE_INFINITY, now);
  const { t, value } = power.column;
  const lengths = offSpans({ t: t.slice(0, to), value: value.slice(0, to) }, holeOf(power) * MINUTE)
    .map(({ from, to: end }) => (end - from) / MINUTE)
    .filter((length) => length <= LONGEST_PAUSE);
  if (lengths.length < PAUSES_TO_LEARN) return USUAL_OFF;
  return Math.max(LEAST_OFF, percentile(lengths, 0.9) + power.every);
}

/** Exactly nothing drawn, where the controller always drew something while it waited. */
function supplyGone({ habits, now }: Room, power: Feed, offSince: Instant): boolean {
  const nothing = since(power.column, now, (value) => value === 0, holeOf(power));
  if (nothing === null || now - nothing < SUPPLY_HOLD * MINUTE) return false;
  if (habits.watts !== null && habits.watts.waiting !== null) return habits.watts.waiting > 0;
  const { to } = within(power.column, Number.NEGATIVE_INFINITY, offSince - 1);
  let drawing = 0;
  let waiting = 0;
  for (let i = 0; i < to; i++) {
    const watts = power.column.value[i] ?? IDLE;
    if (watts >= IDLE) continue;
    waiting += 1;
    if (watts > 0) drawing += 1;
  }
  return waiting >= STANDBY_READINGS && drawing >= 0.9 * waiting;
}
