import { percentile } from '../statistics/index.ts';
import { type Instant, instant, MINUTE } from '../units.ts';
import { around, readAt, since, within } from './column.ts';
import { by, type How, put, when } from './how.ts';
import { type Feed, holeOf, type Room, TOP_OF_CYCLE } from './room.ts';

// Whether the compressor runs when it should, by the power it draws.

export const IDLE = 10; // W: a controller draws a few, a compressor hundreds. Common practice
const USUAL_OFF = 40; // minutes, ours, until this room's own pauses are known
const LEAST_OFF = 20; // minutes, ours
const LONGEST_PAUSE = 120; // minutes: a longer one was an outage, not a pause. Ours
const PAUSES_TO_LEARN = 3; // ours
const SHOULD_RUN_FOR = 20; // minutes above the cycle, ours: longer than a defrost of 18
// K above set point, ours: the cycle's top and a probe's noise; on a cool night the air creeps up to it.
const STARTS_BY = TOP_OF_CYCLE + 0.25;
const SUPPLY_HOLD = 5; // minutes, common practice: hold-off for a lost supply
const STANDBY_READINGS = 10; // ours

export type OffRun = { readonly from: Instant; readonly to: Instant; readonly ended: boolean };
export type PowerSign = {
  /** null: no power probe, or it is silent. */
  readonly stopped: 'unit' | 'power' | false | null;
  readonly watts: number | null;
  readonly offSince: Instant | null;
  /** Minutes of a normal pause here. */
  readonly pause: number;
};

/** Stretches of 48 hours with the compressor off; a hole ends one. */
export function offRuns(power: Feed, now: Instant): readonly OffRun[] {
  const runs: OffRun[] = [];
  const { to } = within(power.column, Number.NEGATIVE_INFINITY, now);
  const hole = holeOf(power) * MINUTE;
  let from: Instant | null = null;
  let last: Instant | null = null;
  for (let i = 0; i < to; i++) {
    const read = readAt(power.column, i);
    if (read === null) continue;
    if (from !== null && last !== null && read.t - last > hole) from = null; // its end was not seen
    if (read.value < IDLE) from ??= read.t;
    else if (from !== null) {
      runs.push({ from, to: read.t, ended: true });
      from = null;
    }
    last = read.t;
  }
  if (from !== null && last !== null) runs.push({ from, to: last, ended: false });
  return runs;
}

/**
 * Whether the compressor stands still when it should run, and whether the unit or its supply is why.
 * A pause is normal up to the longest tenth of this room's own pauses.
 *
 * Source: 10 W and the hold-off of 5 minutes are common practice, no source; the rest is ours.
 */
export function powerSign(room: Room): PowerSign {
  const { power, now } = room;
  if (power?.latest == null) {
    return { stopped: null, watts: null, offSince: null, pause: USUAL_OFF };
  }
  const watts = power.latest.value;
  const runs = offRuns(power, now);
  const pause = usualPause(runs, power.every);
  const offSince = since(power.column, now, (value) => value < IDLE, holeOf(power));
  if (offSince === null) return { stopped: false, watts, offSince, pause };
  const stopped =
    supplyGone(power, now, offSince) || missesItsTurn(room, now - offSince > pause * MINUTE);
  return { stopped: stopped && (watts === 0 ? 'power' : 'unit'), watts, offSince, pause };
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

function usualPause(runs: readonly OffRun[], every: number): number {
  const lengths = runs
    .filter(({ from, to, ended }) => ended && to - from <= LONGEST_PAUSE * MINUTE)
    .map(({ from, to }) => (to - from) / MINUTE);
  if (lengths.length < PAUSES_TO_LEARN) return USUAL_OFF;
  return Math.max(LEAST_OFF, percentile(lengths, 0.9) + every);
}

/** Exactly nothing drawn, where the controller always drew something while it waited. */
function supplyGone(power: Feed, now: Instant, offSince: Instant): boolean {
  const nothing = since(power.column, now, (value) => value === 0, holeOf(power));
  if (nothing === null || now - nothing < SUPPLY_HOLD * MINUTE) return false;
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

/** Warmer than the top of the cycle, still rising, and no start. */
function missesItsTurn({ air, now, setPoint }: Room, tooLong: boolean): boolean {
  if (!tooLong || air?.latest == null) return false;
  const warm = since(air.column, now, (value) => value > setPoint + STARTS_BY, holeOf(air));
  if (warm === null || now - warm < SHOULD_RUN_FOR * MINUTE) return false;
  const before = around(air.column, now - 15 * MINUTE, instant(now - 5 * MINUTE));
  return before !== null && air.latest.value >= before - 0.1; // K: a probe's step
}
