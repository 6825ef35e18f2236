import {
  type BandMoved,
  bandMoved,
  cycleTurns,
  defrostUntil,
  type Excursion,
  excursions,
  firstNotBefore,
  lostBottom,
  type Pull,
  type PullDown,
  pullDown,
  sameValue,
  slowerBy,
  smoothTrace,
  stalled,
  type Trouble,
} from '../cooler/index.ts';
import { HOUR, type Instant, MINUTE, minutes } from '../units.ts';
import { since, within } from './column.ts';
import { minutesOpen } from './minutesOpen.ts';
import { coverage, ENOUGH, holeOf, type Room } from './room.ts';

// What the temperature of the air tells by itself, against what is usual in this room.

export type AirSign = {
  /** The stretch above the cycle that goes on now; null while the air is in its cycle. */
  readonly above: Excursion | null;
  /** Minutes without way down, and how many are usual at most. */
  readonly stalledFor: number;
  readonly patience: number;
  /** Due by the defrosts learned here. */
  readonly defrost: boolean;
  readonly pull: Pull | null;
  readonly pullDown: PullDown | null;
  /** The cycle goes on in another place; null while it does not. */
  readonly moved: BandMoved | null;
  /** Since when it has been colder than ever here. */
  readonly coldSince: Instant | null;
  /** Since when the probe has sent one value, when that is longer than it ever does. */
  readonly sameSince: Instant | null;
  readonly trouble: Extract<
    Trouble,
    'stalled' | 'lost-bottom' | 'too-cold' | 'set-elsewhere' | 'stuck'
  > | null;
  /** Since when that shows. */
  readonly since: Instant | null;
  /** Enough to wake somebody. */
  readonly wakes: boolean;
  /** null: too few readings to say. */
  readonly known: boolean;
};

const LOOKED_BACK = 8 * HOUR; // longer than any patience. Ours
const COLD_FOR = 8; // minutes, ours: longer than a reading or two gone wrong
const SURE = 1.5; // times the usual, from where on a slow loss wakes somebody. Ours
const SURE_STALL = 1.4; // times the patience, from where on a halt below the limit wakes somebody. Ours
const MOVED_WITHIN = 6 * HOUR; // ms in which the cycles of a changed set point are looked for. Ours
const FREEZES = 0; // °C: leaves and fruit freeze a little below it
const MOST_PATIENT = 1.5; // times the usual on a day hotter than any learned. Ours
// K above the line from which warm produce or a long opening is behind it, and how many times longer
// the way down may then take. Ours, tried on simulated rooms.
const LOADED = 1.5;
const LOADED_MORE = 1.5;
const SEEN = 120; // minutes that have to be known before anything is said to be in its cycle. Ours

export function airSign(room: Room): AirSign {
  const { air, now, habits, supply } = room;
  const nothing: AirSign = {
    ...{ above: null, stalledFor: 0, patience: 0, defrost: false, pull: null, pullDown: null },
    ...{ moved: null, coldSince: null, sameSince: null, trouble: null, since: null },
    ...{ wakes: false, known: false },
  };
  if (air?.latest == null) return nothing;
  const hole = holeOf(air) * MINUTE;
  // While a planned stop lasts, and for the time of it, there is no cycle to miss.
  const from = Math.max(now - LOOKED_BACK, supply.on ? (supply.since ?? 0) : now - LOOKED_BACK);
  const smooth = smoothTrace(air.column, from, now);
  const { line, steep, top, bottom, lowest } = habits;
  const last = excursions(smooth, { line, steep, hole }).at(-1);
  const above = last === undefined || last.ended ? null : last;
  const pull = supply.on ? lostBottom(smooth, { top, bottom, line }, hole) : null;
  const { value } = smooth;
  const newest = value.at(-1) ?? air.latest.value;
  const coldSince =
    newest < lowest ? since({ ...smooth }, now, (v) => v < lowest, holeOf(air)) : null;
  const same = habits.same === null ? null : sameValue(window(room), hole).since;
  const sameSince =
    same !== null && habits.same !== null && now - same >= habits.same * MINUTE ? same : null;
  // While its contact said that the door is open, nothing could cool it.
  const shut = (length: number) => length - minutesOpen(room, now - length * MINUTE);
  const stall = above === null ? 0 : shut(stalled(above, now));
  const recent = firstNotBefore(smooth.t, now - MOVED_WITHIN);
  const turns = cycleTurns({ t: smooth.t.slice(recent), value: smooth.value.slice(recent) }, hole);
  const moved = habits.cycle === null || !supply.on ? null : bandMoved(turns, habits.cycle, now);
  const patience = patienceOf(room, above);
  const spared = above !== null && now < defrostUntil(habits.defrosts, above.since);
  const signs: AirSign = {
    ...{ above, stalledFor: stall, patience, defrost: spared, moved, coldSince, sameSince },
    pullDown: above === null || stall >= patience ? null : pullDown(smooth, above, line),
    pull: pull && { ...pull, flat: minutes(shut(pull.flat)) },
    ...{ trouble: null, since: null, wakes: false },
    known: above !== null || coverage(air, now, SEEN) >= ENOUGH,
  };
  if (sameSince !== null) return { ...signs, trouble: 'stuck', since: sameSince };
  if (moved !== null) {
    const middle = (moved.top + moved.bottom) / 2;
    const wakes = middle > room.limit || moved.bottom < FREEZES;
    return { ...signs, trouble: 'set-elsewhere', since: moved.since, wakes };
  }
  if (coldSince !== null && now - coldSince >= COLD_FOR * MINUTE) {
    return { ...signs, trouble: 'too-cold', since: coldSince, wakes: newest < FREEZES };
  }
  if (!supply.on) return signs;
  if (above !== null && stall >= patience && !spared) {
    const wakes = newest > room.limit || stall >= SURE_STALL * patience;
    return { ...signs, trouble: 'stalled', since: above.since, wakes };
  }
  const late = signs.pull === null ? null : pullLate(room, signs.pull);
  if (late !== null && pull !== null && late.minutes >= late.most) {
    const wakes = late.minutes >= SURE * late.most;
    return { ...signs, trouble: 'lost-bottom', since: pull.since, wakes };
  }
  return signs;
}

/** Minutes on the way from top to bottom and how many that may take, by what lifted the air on it. */
export function pullLate({ habits, outside }: Room, pull: Pull) {
  if (pull.since === null) return null;
  const { within, out, back, flat } = habits.pull;
  const loaded = pull.peak >= habits.line + LOADED ? LOADED_MORE : 1;
  const hot = slowerBy(habits, outside);
  const slower = hot * loaded;
  const all = { minutes: pull.minutes, most: (pull.out ? out : within) * slower };
  const last = { minutes: pull.back, most: back * slower };
  const rest = { minutes: pull.flat, most: flat * hot }; // what it learned from had loads too
  const worse = [all, ...(pull.out ? [last] : []), rest];
  return worse.reduce((a, b) => (b.minutes / b.most > a.minutes / a.most ? b : a));
}

const window = ({ air, now }: Room) => {
  if (air === null) return { t: [], value: [] };
  const { from, to } = within(air.column, now - LOOKED_BACK, now);
  return { t: air.column.t.slice(from, to), value: air.column.value.slice(from, to) };
};

function patienceOf({ habits, outside }: Room, above: Excursion | null): number {
  const { slow, steep, halt } = habits.patience;
  const usual = above?.falling ? halt : above?.steep ? steep : slow;
  return usual * Math.min(MOST_PATIENT, slowerBy(habits, outside));
}
