import { countedDay, drawnDay, type Trace } from '../cooler/index.ts';
import { HOUR, type Instant, MINUTE } from '../units.ts';
import { highest, within } from './column.ts';
import { coverage, ENOUGH, type Feed, holeOf, type Room } from './room.ts';
import type { CoolRoomNow, PlaceNow } from './snapshot.ts';

const DAY = 24 * HOUR;
const DAY_MINUTES = 24 * 60;

/** Energy and running share of the last 24 hours; null under 80 % of the samples. */
export function energyOf(room: Room, energy: Feed | null): CoolRoomNow['energy'] {
  const { power, now } = room;
  const known = power !== null && coverage(power, now, DAY_MINUTES) >= ENOUGH ? power : null;
  const counted = energy === null ? null : countedDay(lastDay(energy, now));
  const drawn = known === null ? null : drawnDay(lastDay(known, now), holeOf(known) * MINUTE);
  return {
    kWhPerDay: (counted ?? drawn)?.kilowattHours ?? null,
    dutyCycle: known === null ? null : runningShare(known, now),
  };
}

/** The readings of the last 24 hours. */
function lastDay({ column }: Feed, now: Instant): Trace {
  const { from, to } = within(column, now - DAY, now);
  return { t: column.t.slice(from, to), value: column.value.slice(from, to) };
}

/** Share of readings above half the running power: common practice for a duty cycle. */
function runningShare({ column }: Feed, now: Instant): number | null {
  const { from, to } = within(column, now - DAY, now);
  const half = (highest(column, now - DAY, now)?.value ?? 0) / 2;
  if (half <= 0 || to === from) return half <= 0 && to > from ? 0 : null;
  let running = 0;
  for (let i = from; i < to; i++) if ((column.value[i] ?? 0) > half) running += 1;
  return running / (to - from);
}

/** The counter of a room, wherever in it the meter hangs. */
export function energyFeed({ spots }: PlaceNow): Feed | null {
  for (const { columns, every, probe } of spots) {
    const column = columns.energy;
    if (column !== undefined) return { column, probe, every, latest: null };
  }
  return null;
}
