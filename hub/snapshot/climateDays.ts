import { type PlaceDay, type PlaceRule, placeHours } from '../../rules/days/index.ts';
import { heatLimitOf } from '../../rules/decide/index.ts';
import type { AirRead, Window } from '../../rules/wetness/index.ts';
import type { Calendar } from '../clock.ts';
import { type Farm, WET } from '../farm/index.ts';
import type { Store } from '../store/index.ts';
import { joinedAfter, longestGap } from './days.ts';
import { diseaseOfDay } from './diseaseOfDay.ts';
import { firstAt } from './firstAt.ts';
import { columnsOf, pair, type Spots } from './spots.ts';
import { ventStates } from './ventStates.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
/** Before a day: whether leaves were wet at its start, spells that reach in, and a week of weather. */
const BEFORE = 11 * DAY; // ours: seven disease days and three for a spell
/** Days read at once. Ours. */
const CHUNK = 14;
/** Temperature and humidity read this far apart still belong together. Ours, as for other days. */
const TOGETHER = 10 * MINUTE;
/** A day is over when the first readings after it are in. Ours. */
const JOINED = 2 * HOUR;
/** A change of readings may still show in the week after it. */
const ECHO = 8; // days
/** Days of one place and crop kept in memory, all together: about 10 MB. Ours. */
const MOST_KEPT = 4000;

/** What a crop asks of a place; null where its band is not told. */
export function placeRule(farm: Farm, placeId: string, cropId: string): PlaceRule | null {
  const [place, crop] = [farm.place(placeId), farm.crop(cropId)];
  if (!place || !crop?.band) return null;
  return {
    band: crop.band,
    heatLimit: heatLimitOf({ heatLimit: crop.heatLimit ?? null, band: crop.band }),
    chill: crop.chill ?? null,
    wet: place.wet ?? WET,
  };
}

/** What whole days in a place were to a crop: worked out once, and again when readings change. */
export function makeClimateDays(
  store: Store,
  spots: Spots,
  farm: () => Farm,
  calendar: () => Calendar,
) {
  const kept = new Map<string, Map<string, PlaceDay>>();
  let count = 0;
  let version = 0;
  const ofPlace = (place: string) => {
    const days = kept.get(place) ?? new Map<string, PlaceDay>();
    kept.set(place, days);
    return days;
  };

  const openAt = (place: string, from: number, to: number) => {
    if (!farm().place(place)?.vents) return () => null;
    const state = ventStates(store, farm(), calendar(), place, from, to);
    return (t: number) => state(t).open;
  };

  const make = (placeId: string, cropId: string, rule: PlaceRule, days: readonly string[]) => {
    const first = calendar().bounds(days[0] ?? '').begins;
    const last = calendar().bounds(days.at(-1) ?? '').ends;
    const read = new Map<string, { air: AirRead[]; every: number }>();
    const readsOf = (spot: string) => {
      let known = read.get(spot);
      if (known) return known;
      const here = spots.overlapping(placeId, spot, first, last).at(-1);
      const every = (here && store.probes.get(here.probe)?.everyMs) ?? 5 * MINUTE;
      const [from, to] = [first - BEFORE, last + joinedAfter(every)];
      const points = (quantity: string) =>
        columnsOf(spots.points(placeId, spot, quantity, from, to));
      const within = Math.max(TOGETHER, every / 2);
      const air = pair(points('temperature'), points('humidity'), within) as AirRead[];
      known = { air, every };
      read.set(spot, known);
      return known;
    };
    const isOpen = openAt(placeId, first, last);
    const { disease } = farm().crop(cropId) ?? { disease: [] };
    return days.map((day): PlaceDay => {
      const window: Window = {
        from: calendar().bounds(day).begins,
        to: calendar().bounds(day).ends,
      };
      const spot = spots.ordered(placeId, window.from, window.to).find((name) => {
        const { air } = readsOf(name);
        return (air[firstAt(air, window.from)]?.t ?? window.to) < window.to;
      });
      const { air, every } = spot === undefined ? { air: [], every: MINUTE } : readsOf(spot);
      const wet = { ...rule.wet, maxGapMinutes: longestGap(every) };
      const near = air.slice(
        firstAt(air, window.from - 12 * HOUR),
        firstAt(air, window.to + joinedAfter(every)),
      );
      const place = farm().place(placeId);
      return {
        day,
        ...placeHours(near, { ...rule, wet }, window, isOpen),
        disease:
          spot === undefined || !place || disease.length === 0
            ? null
            : diseaseOfDay(
                air,
                { wet, diseases: disease, place, farm: farm(), calendar: calendar() },
                day,
              ),
      };
    });
  };

  return {
    /** Whole days of a place from `from` to `to` that are over; empty where the crop has no band. */
    of(placeId: string, cropId: string, from: string, to: string, now: number): PlaceDay[] {
      const rule = placeRule(farm(), placeId, cropId);
      if (rule === null) return [];
      if (count > MOST_KEPT) this.forgetAll();
      const here = ofPlace(placeId);
      const days: string[] = [];
      for (let day = from; day <= to; day = calendar().add(day, 1))
        if (now >= calendar().bounds(day).ends + JOINED) days.push(day);
      const wanted = days.filter((day) => !here.has(`${day} ${cropId}`));
      for (let at = 0; at < wanted.length; at += CHUNK)
        for (const made of make(placeId, cropId, rule, wanted.slice(at, at + CHUNK))) {
          here.set(`${made.day} ${cropId}`, made);
          count += 1;
        }
      return days.flatMap((day) => here.get(`${day} ${cropId}`) ?? []);
    },
    /** Changes when anything that was worked out is worked out again. */
    version: () => version,
    /** Readings of that place changed, from one day to another. */
    touched(place: string, first: string, last: string) {
      const until = calendar().add(last, ECHO);
      for (const key of kept.get(place)?.keys() ?? []) {
        const day = key.slice(0, 10);
        if (day < first || day > until) continue;
        kept.get(place)?.delete(key);
        count -= 1;
        version += 1;
      }
    },
    forgetAll() {
      kept.clear();
      count = 0;
      version += 1;
    },
  };
}
export type ClimateDays = ReturnType<typeof makeClimateDays>;
