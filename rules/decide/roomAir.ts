import {
  defrostUntil,
  type Excursion,
  excursions,
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
import { HOUR, type Instant, MINUTE } from '../units.ts';
import { since, within } from './column.ts';
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
  /** Since when it has been colder than ever here. */
  readonly coldSince: Instant | null;
  /** Since when the probe has sent one value, when that is longer than it ever does. */
  readonly sameSince: Instant | null;
  readonly trouble: Extract<Trouble, 'stalled' | 'lost-bottom' | 'too-cold' | 'stuck'> | null;
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
    ...{ coldSince: null, sameSince: null, trouble: null, since: null, wakes: false, known: false },
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
  const stall = above === null ? 0 : stalled(above, now);
  const patience = patienceOf(room, above);
  const spared = above !== null && now < defrostUntil(habits, above.since);
  const signs: AirSign = {
    ...{ above, stalledFor: stall, patience, defrost: spared, pull, coldSince, sameSince },
    pullDown: above === null || stall >= patience ? null : pullDown(smooth, above, line),
    ...{ trouble: null, since: null, wakes: false },
    known: above !== null || coverage(air, now, SEEN) >= ENOUGH,
  };
  if (sameSince !== null) return { ...signs, trouble: 'stuck', since: sameSince };
  if (coldSince !== null && now - coldSince >= COLD_FOR * MINUTE) {
    return { ...signs, trouble: 'too-cold', since: coldSince, wakes: true };
  }
  if (!supply.on) return signs;
  if (above !== null && stall >= patience && !spared) {
    return { ...signs, trouble: 'stalled', since: above.since, wakes: true };
  }
  const late = pull === null ? null : pullLate(room, pull);
  if (late !== null && pull !== null && late.minutes >= late.most) {
    const wakes = late.minutes >= SURE * late.most;
    return { ...signs, trouble: 'lost-bottom', since: pull.since, wakes };
  }
  return signs;
}

/** Minutes on the way from top to bottom and how many that may take, by what lifted the air on it. */
export function pullLate({ habits, outside }: Room, pull: Pull) {
  if (pull.since === null) return null;
  const { within, out, back } = habits.pull;
  const loaded = pull.peak >= habits.line + LOADED ? LOADED_MORE : 1;
  const slower = slowerBy(habits, outside) * loaded;
  const all = { minutes: pull.minutes, most: (pull.out ? out : within) * slower };
  const last = { minutes: pull.back, most: back * slower };
  return pull.out && last.minutes / last.most > all.minutes / all.most ? last : all;
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
