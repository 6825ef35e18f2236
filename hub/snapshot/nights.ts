import { dewPoint } from '../../rules/air/index.ts';
import type { NightRecord } from '../../rules/decide/index.ts';
import { sunTimes } from '../../rules/heat/index.ts';
import { type Celsius, celsius, instant, percent } from '../../rules/units.ts';
import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import type { Store } from '../store/index.ts';
import { columnsOf, pair, type Spots } from './spots.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
/** Readings this near to the wanted moment are averaged; failing those, the nearest within reach. */
const AROUND = 10 * MINUTE; // methods of FAO 2005: "around two hours after sunset"; ours
const REACH = 35 * MINUTE; // ours: half of an hourly probe's step, and a little
/** A longer gap may hide the lowest temperature. Common practice, no source. */
const LONGEST_GAP = 2 * HOUR;
/** Nights the learning looks back on. */
export const NIGHTS = 60;

type Air = { t: number; temperature: number; humidity: number | null };

const mean = (values: readonly number[]) =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

function nearTo(air: readonly Air[], t: number): readonly Air[] {
  const near = air.filter((reading) => Math.abs(reading.t - t) <= AROUND);
  if (near.length > 0) return near;
  const nearest = air.reduce<Air | null>(
    (best, reading) =>
      best === null || Math.abs(reading.t - t) < Math.abs(best.t - t) ? reading : best,
    null,
  );
  return nearest === null || Math.abs(nearest.t - t) > REACH ? [] : [nearest];
}

/** Where humidity is not read at the spot, the dew point is that of the air outside. */
function around(
  air: readonly Air[],
  outside: () => readonly Air[],
  t: number,
): NightRecord['evening'] {
  const near = nearTo(air, t);
  if (near.length === 0) return null;
  return {
    temperature: celsius(mean(near.map(({ temperature }) => temperature))),
    dewPoint: dewPointOf(near) ?? dewPointOf(nearTo(outside(), t)),
  };
}

function dewPointOf(near: readonly Air[]): Celsius | null {
  const dews = near.flatMap(({ temperature, humidity }) =>
    humidity === null || humidity < 5 ? [] : [dewPoint(celsius(temperature), percent(humidity))],
  );
  return dews.length > 0 ? celsius(mean(dews)) : null;
}

function lowOf(air: readonly Air[], from: number, to: number): Celsius | null {
  let low = Number.POSITIVE_INFINITY;
  let last = from;
  for (const { t, temperature } of air) {
    if (t < from || t > to) continue;
    if (t - last > LONGEST_GAP) return null;
    last = t;
    low = Math.min(low, temperature);
  }
  return to - last > LONGEST_GAP || low === Number.POSITIVE_INFINITY ? null : celsius(low);
}

/** From sunset to an hour after sunrise of the night that ends on `night`; null in a polar summer or winter. */
export function nightBounds(farm: Farm, calendar: Calendar, night: string) {
  const { lat, lon } = farm.file.farm;
  const noon = (day: string) => instant(calendar.bounds(day).begins + 12 * HOUR);
  const { set } = sunTimes(noon(calendar.add(night, -1)), lat, lon);
  const { rise } = sunTimes(noon(night), lat, lon);
  return set === null || rise === null ? null : { sunset: set, sunrise: rise, to: rise + HOUR };
}

/** Past nights of each spot: kept in the store, made again when their readings change. */
export function makeNights(store: Store, spots: Spots, farm: () => Farm, calendar: () => Calendar) {
  const memory = new Map<string, { lastNight: string; until: number; nights: NightRecord[] }>();

  const airOf = (place: string, spot: string, from: number, to: number) =>
    pair(
      columnsOf(spots.points(place, spot, 'temperature', from, to)),
      columnsOf(spots.points(place, spot, 'humidity', from, to)),
      AROUND,
    );

  const make = (place: string, spot: string, night: string): NightRecord => {
    const bounds = nightBounds(farm(), calendar(), night);
    const nothing = { night, afternoon: null, evening: null, low: null };
    if (bounds === null) return nothing;
    const fifteen = calendar().bounds(calendar().add(night, -1)).begins + 15 * HOUR;
    const from = Math.min(fifteen, bounds.sunset) - REACH;
    const air = airOf(place, spot, from, bounds.to + 1);
    if (air.length === 0) return nothing;
    const outside = () => {
      const there = farm().outside?.id;
      if (there === undefined || air.some(({ humidity }) => humidity !== null)) return [];
      const read = spots
        .ordered(there, from, bounds.to)
        .find((name) => spots.points(there, name, 'humidity', from, bounds.to).length > 0);
      return read === undefined ? [] : airOf(there, read, from, bounds.to + 1);
    };
    return {
      night,
      afternoon: around(air, outside, fifteen),
      evening: around(air, outside, bounds.sunset + 2 * HOUR),
      low: lowOf(air, bounds.sunset, bounds.to),
    };
  };

  return {
    /** The last nights that have ended, oldest first, from the first with any reading on. */
    of(place: string, spot: string, now: number): readonly NightRecord[] {
      const today = calendar().dayOf(now);
      const ended = nightBounds(farm(), calendar(), today);
      const lastNight = ended && now >= ended.to ? today : calendar().add(today, -1);
      const key = `${place}\n${spot}`;
      const held = memory.get(key);
      if (held?.lastNight === lastNight) return held.nights;
      const first = calendar().add(lastNight, -(NIGHTS - 1));
      const kept = new Map(
        store.placeFacts.nights(place, spot, first, lastNight).map((row) => [row.night, row.facts]),
      );
      const nights: NightRecord[] = [];
      const fresh: NightRecord[] = [];
      for (let night = first; night <= lastNight; night = calendar().add(night, 1)) {
        const facts = kept.get(night);
        const record: NightRecord = facts ? JSON.parse(facts) : make(place, spot, night);
        if (!facts) fresh.push(record);
        if (record.low !== null || record.evening !== null || nights.length > 0)
          nights.push(record);
      }
      if (fresh.length > 0)
        store.spare(() => {
          for (const record of fresh)
            store.placeFacts.putNight(place, spot, record.night, JSON.stringify(record));
        });
      const until = nightBounds(farm(), calendar(), lastNight)?.to ?? now;
      memory.set(key, { lastNight, until, nights });
      return nights;
    },
    /** Readings from `from` on changed: nights in memory that they belong to are made again. */
    touched(place: string, from: number) {
      const everywhere = place === farm().outside?.id; // others may take their dew point from there
      for (const [key, { until }] of memory)
        if (from < until && (everywhere || key.startsWith(`${place}\n`))) memory.delete(key);
    },
    forgetAll: () => memory.clear(),
  };
}
export type Nights = ReturnType<typeof makeNights>;
