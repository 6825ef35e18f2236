import { dewPoint } from '../../rules/air/index.ts';
import { MORNING_REACH, type NightRecord } from '../../rules/decide/index.ts';
import { isClearCalm } from '../../rules/frost/index.ts';
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

/** The last reading by an hour after sunrise, as the morning's forecast knows it. */
function morningOf(
  air: readonly Air[],
  outside: () => readonly Air[],
  at: number,
): NightRecord['morning'] {
  const before = (readings: readonly Air[]) =>
    readings.findLast(({ t }) => t <= at && at - t <= MORNING_REACH);
  const last = before(air);
  if (last === undefined) return null;
  const damp = air.some(({ humidity }) => humidity !== null) ? last : before(outside());
  return {
    temperature: celsius(last.temperature),
    dewPoint: damp === undefined ? null : dewPointOf([damp]),
  };
}

/** Temperatures at sunset and each whole hour after it, up to sunrise. */
function hoursOf(air: readonly Air[], sunset: number, sunrise: number): (Celsius | null)[] {
  const hours: (Celsius | null)[] = [];
  for (let t = sunset; t <= sunrise; t += HOUR) {
    const near = nearTo(air, t);
    hours.push(
      near.length === 0 ? null : celsius(mean(near.map(({ temperature }) => temperature))),
    );
  }
  return hours;
}

/** From sunset to an hour after sunrise of the night that ends on `night`; null in a polar summer or winter. */
export function nightBounds(farm: Farm, calendar: Calendar, night: string) {
  const { lat, lon } = farm.file.farm;
  const noon = (day: string) => instant(calendar.bounds(day).begins + 12 * HOUR);
  const before = sunTimes(noon(calendar.add(night, -1)), lat, lon);
  const { rise } = sunTimes(noon(night), lat, lon);
  const { set: sunset } = before;
  if (sunset === null || rise === null) return null;
  return { sunset, sunrise: rise, to: rise + HOUR, sunriseBefore: before.rise };
}
export type NightBounds = NonNullable<ReturnType<typeof nightBounds>>;

/** Past nights of each spot: kept in the store, made again when their readings change. */
export function makeNights(store: Store, spots: Spots, farm: () => Farm, calendar: () => Calendar) {
  const memory = new Map<string, { lastNight: string; until: number; nights: NightRecord[] }>();

  const airOf = (place: string, spot: string, from: number, to: number) =>
    pair(
      columnsOf(spots.points(place, spot, 'temperature', from, to)),
      columnsOf(spots.points(place, spot, 'humidity', from, to)),
      AROUND,
    );

  /** Whether it was a night of radiation frost outdoors, as far as the sensors there can tell. */
  const clearCalm = ({ sunset }: NightBounds): boolean | null => {
    const there = farm().outside?.id;
    if (there === undefined) return null;
    const to = sunset + 2 * HOUR + 1;
    const hangs = (spot: string) => spots.overlapping(there, spot, sunset, to).length > 0;
    const read = (spot: string, quantity: string) =>
      spots.points(there, spot, quantity, sunset, to);
    const temperatures = (spot: string) =>
      read(spot, 'temperature').map(({ t, value }) => ({ t: instant(t), value: celsius(value) }));
    const air = hangs('air') ? 'air' : (spots.ordered(there, sunset, to)[0] ?? 'air');
    const values = (quantity: string) => read(air, quantity).map(({ value }) => value);
    const gauged = spots
      .overlapping(there, air, sunset, to)
      .some(({ probe }) => store.readings.quantitiesOf(probe).includes('rain'));
    const rain = values('rain');
    const wind = values('wind');
    return isClearCalm({
      sunset,
      air: temperatures(air),
      ground: hangs('grass') && air !== 'grass' ? temperatures('grass') : undefined,
      rain: gauged ? (rain.length === 0 ? null : rain.reduce((sum, mm) => sum + mm, 0)) : undefined,
      wind: wind.length === 0 ? null : mean(wind),
    });
  };

  const make = (place: string, spot: string, night: string): NightRecord => {
    const bounds = nightBounds(farm(), calendar(), night);
    const nothing = { night, morning: null, afternoon: null, evening: null, low: null };
    if (bounds === null) return nothing;
    const { sunset, sunrise, sunriseBefore } = bounds;
    const fifteen = calendar().bounds(calendar().add(night, -1)).begins + 15 * HOUR;
    const early = sunriseBefore === null ? fifteen : sunriseBefore + HOUR - MORNING_REACH;
    const from = Math.min(fifteen - REACH, sunset - REACH, early);
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
      morning: sunriseBefore === null ? null : morningOf(air, outside, sunriseBefore + HOUR),
      afternoon: around(air, outside, fifteen),
      evening: around(air, outside, sunset + 2 * HOUR),
      low: lowOf(air, sunset, bounds.to),
      hours: hoursOf(air, sunset, sunrise),
      length: (sunrise - sunset) / HOUR,
      clearCalm: clearCalm(bounds),
    };
  };

  const lastEnded = (now: number) => {
    const today = calendar().dayOf(now);
    const ended = nightBounds(farm(), calendar(), today);
    return ended && now >= ended.to ? today : calendar().add(today, -1);
  };

  /** Nights from `first` to `last`, both of them, from the first with any reading on. */
  const between = (place: string, spot: string, first: string, last: string): NightRecord[] => {
    const kept = new Map(
      store.placeFacts.nights(place, spot, first, last).map((row) => [row.night, row.facts]),
    );
    const nights: NightRecord[] = [];
    const fresh: NightRecord[] = [];
    for (let night = first; night <= last; night = calendar().add(night, 1)) {
      const facts = kept.get(night);
      const record: NightRecord = facts ? JSON.parse(facts) : make(place, spot, night);
      if (!facts) fresh.push(record);
      if (record.low !== null || record.evening !== null || nights.length > 0) nights.push(record);
    }
    if (fresh.length > 0)
      store.spare(() => {
        for (const record of fresh)
          store.placeFacts.putNight(place, spot, record.night, JSON.stringify(record));
      });
    return nights;
  };

  return {
    lastEnded,
    /** Nights that have ended, from `first` on: also those too old to learn from. */
    since: (place: string, spot: string, first: string, now: number) =>
      between(place, spot, first, lastEnded(now)),
    /** The last nights that have ended, oldest first, from the first with any reading on. */
    of(place: string, spot: string, now: number): readonly NightRecord[] {
      const lastNight = lastEnded(now);
      const key = `${place}\n${spot}`;
      const held = memory.get(key);
      if (held?.lastNight === lastNight) return held.nights;
      const first = calendar().add(lastNight, -(NIGHTS - 1));
      const nights = between(place, spot, first, lastNight);
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
