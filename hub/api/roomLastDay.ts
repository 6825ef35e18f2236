import { longestGapOf, recordDay } from '../../rules/cooler/index.ts';
import type { CoolRoomDay, FarmPlace } from '../contract/index.ts';
import { OF_ROOM, placeSeries, type Series } from '../lots/index.ts';
import { lengthOf, type Span, spansWhere } from '../record/index.ts';
import { roomDayWords } from '../words/index.ts';
import type { ApiParts } from './parts.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
/** Under a watt nothing is fed: a controller alone draws some. Ours. */
const NO_SUPPLY = 1; // W
/** A contact may report changes only. Ours. */
const DOOR_HOLDS = 60; // minutes
const LIMIT = 5; // °C

const columns = (series: Series) => ({
  t: series.map(({ t }) => t as number),
  value: series.map(({ value }) => (value === null ? null : Number(value.toFixed(2)))),
});

/** The last 24 hours of a room, to be drawn and to be read. */
export function roomLastDay(parts: ApiParts, room: FarmPlace): CoolRoomDay {
  const to = parts.clock.now();
  const from = to - DAY;
  const { readings } = parts.snapshots.lots;
  const limit = room.limit ?? LIMIT;
  const air = placeSeries(readings, room.id, OF_ROOM, from, to);
  const crate = placeSeries(readings, room.id, ['product'], from, to);
  const facts = recordDay(air, limit);

  /** Stretches of another quantity, wherever in the room it is measured; null where nowhere. */
  const stretches = (quantity: string, atLeast: number) => {
    for (const { probe, spot } of readings.overlapping(room.id, null, from, to)) {
      const points = readings.points(room.id, spot, quantity, from - HOUR, to);
      if (points.length === 0) continue;
      const every = readings.everyMs(probe) / MINUTE;
      const gap = Math.max(longestGapOf(every), atLeast) * MINUTE;
      return {
        points,
        where: (holds: (value: number) => boolean) => spansWhere(points, holds, { from, to, gap }),
      };
    }
    return null;
  };
  const door = stretches('door', DOOR_HOLDS)?.where((value) => value > 0.5) ?? null;
  const power = stretches('power', 0);
  // Half of the most it drew: common practice for telling running from standing still.
  const half = Math.max(0, ...(power?.points.map(({ value }) => value) ?? [])) / 2;
  const running = power && half > NO_SUPPLY ? power.where((value) => value > half) : null;
  const noPower = power?.where((value) => value < NO_SUPPLY) ?? null;

  return {
    from,
    to,
    air: columns(air),
    product: crate.some(({ value }) => value !== null) ? columns(crate) : null,
    setPoint: room.setPoint ?? 0,
    limit,
    doorOpen: door,
    running,
    noPower,
    hours: hourly(air, from, to),
    words: roomDayWords({
      low: facts.lowest,
      high: facts.highest,
      aboveHours: facts.aboveHours,
      unknownHours: facts.unknownHours,
      limit,
      doorOpenings: door?.length ?? null,
      doorMinutes: minutesOf(door),
      noPowerMinutes: noPower && minutesOf(noPower),
      cycles: running?.length ?? null,
    }),
  };
}

const minutesOf = (spans: readonly Span[] | null) => lengthOf(spans ?? []) / MINUTE;

function hourly(air: Series, from: number, to: number): CoolRoomDay['hours'] {
  const hours: CoolRoomDay['hours'] = [];
  for (let t = Math.floor(from / HOUR) * HOUR; t < to; t += HOUR) {
    const values = air.flatMap((one) =>
      one.value !== null && one.t >= t && one.t < t + HOUR ? [one.value] : [],
    );
    const known = values.length > 0;
    hours.push({
      t: Math.max(t, from),
      low: known ? Number(Math.min(...values).toFixed(2)) : null,
      high: known ? Number(Math.max(...values).toFixed(2)) : null,
    });
  }
  return hours;
}
