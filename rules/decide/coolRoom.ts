import { timeAbove } from '../cooler/index.ts';
import { celsius, HOUR, hours, MINUTE, minutes } from '../units.ts';
import { within } from './column.ts';
import { holeOf, type Room } from './room.ts';
import { energyFeed, energyOf } from './roomEnergy.ts';
import type { Signs } from './roomSigns.ts';
import type { CoolRoomNow } from './snapshot.ts';

const DAY = 24 * HOUR;

/** How a cool room is doing, for the screens. */
export function coolRoom(signs: Signs): CoolRoomNow {
  const { room, drift, cause, state, produce, hoursToLimit, tauHours } = signs;
  const latest = room.air?.latest ?? null;
  const lastKnown = room.air?.column.t[lastBefore(room)] ?? null;
  return {
    id: room.place.id,
    asOf: latest?.t ?? lastKnown,
    state,
    temperature: latest === null ? null : celsius(latest.value),
    setPoint: room.setPoint,
    limit: room.limit,
    drift: drift.bottom,
    cause,
    produceEstimate: produce,
    holdOver: {
      minutesToLimit: hoursToLimit === null ? null : minutes(hoursToLimit * 60),
      tauHours,
    },
    aboveLimit: { ...overLimit(room), since: signs.aboveSince },
    energy: energyOf(room, energyFeed(room.place)),
  };
}

const lastBefore = ({ air, now }: Room) =>
  air === null ? -1 : within(air.column, Number.NEGATIVE_INFINITY, now).to - 1;

/** Of the last 24 hours; time that no reading speaks for stays unknown. */
function overLimit(room: Room) {
  const { air, now, limit } = room;
  if (air === null) return { hours: hours(0), unknownHours: hours(24) };
  const { from, to } = within(air.column, now - DAY, now);
  const readings = [];
  for (let i = from; i < to; i++) {
    const t = air.column.t[i];
    const value = air.column.value[i];
    if (t !== undefined && value !== undefined) readings.push({ t, value: celsius(value) });
  }
  const inside = timeAbove(readings, limit, { gapMaxMinutes: holeOf(air) });
  const first = readings[0]?.t ?? now;
  const last = readings.at(-1)?.t ?? now - DAY;
  const hole = holeOf(air) * MINUTE;
  const edges = [first - (now - DAY), now - last].filter((gap) => gap > hole);
  const outside = edges.reduce((sum, gap) => sum + gap / HOUR, 0);
  return {
    hours: inside.aboveHours,
    unknownHours: hours(Math.min(24, inside.unknownHours + outside)),
  };
}
