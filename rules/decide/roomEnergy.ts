import { HOUR, type Instant, MINUTE } from '../units.ts';
import { highest, readAt, within } from './column.ts';
import { coverage, ENOUGH, type Feed, holeOf, type Room } from './room.ts';
import type { CoolRoomNow, PlaceNow } from './snapshot.ts';

const DAY = 24 * HOUR;
const DAY_MINUTES = 24 * 60;

/** Energy and running share of the last 24 hours; null under 80 % of the samples. */
export function energyOf(room: Room, energy: Feed | null): CoolRoomNow['energy'] {
  const { power, now } = room;
  const known = power !== null && coverage(power, now, DAY_MINUTES) >= ENOUGH ? power : null;
  const counted = energy === null ? null : countedEnergy(energy, now);
  return {
    kWhPerDay: counted ?? (known === null ? null : drawnEnergy(known, now)),
    dutyCycle: known === null ? null : runningShare(known, now),
  };
}

/** Differences of a counter; one that begins again counts from zero, which is the least it can be. */
function countedEnergy({ column, every }: Feed, now: Instant): number | null {
  const { from, to } = within(column, now - DAY, now);
  const first = readAt(column, from);
  const last = readAt(column, to - 1);
  if (first === null || last === null || last.t - first.t < ENOUGH * DAY) return null;
  let sum = 0;
  for (let i = from + 1; i < to; i++) {
    const before = column.value[i - 1] ?? 0;
    const after = column.value[i] ?? before;
    sum += after >= before ? after - before : after;
  }
  return every > 0 ? (sum * DAY) / (last.t - first.t) : null;
}

/** Watts over time, each reading until the next, scaled for the time that no reading speaks for. */
function drawnEnergy(power: Feed, now: Instant): number | null {
  const { from, to } = within(power.column, now - DAY, now);
  const hole = holeOf(power) * MINUTE;
  let wattHours = 0;
  let knownTime = 0;
  for (let i = from + 1; i < to; i++) {
    const a = readAt(power.column, i - 1);
    const b = readAt(power.column, i);
    if (a === null || b === null || b.t - a.t > hole) continue;
    wattHours += (a.value * (b.t - a.t)) / HOUR;
    knownTime += b.t - a.t;
  }
  return knownTime > 0 ? ((wattHours / 1000) * DAY) / knownTime : null;
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
