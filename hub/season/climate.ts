import { climateCalendar, placeLine } from '../../rules/batches/index.ts';
import { degreeDaysSine, startingBase } from '../../rules/heat/index.ts';
import type { Calendar } from '../clock.ts';
import type { Day } from '../contract/index.ts';
import type { SiteRecord } from './siteRecord.ts';

/** Rain that makes a wet day. A day with 1 mm or more is WMO's wet day (from memory). */
const WET_RAIN = 1; // mm
const WET_LEAVES = 12; // h of wet leaves in a day; ours
const ENOUGH_OWN = 300; // days known with which an own record tells of dates; ours
const RECENT = 30; // days
const ENOUGH_RECENT = 20; // of them; ours
const LEARNED = 21; // shared days that map the station to the place; common practice, no source

export type Climate = {
  /** Expected heat units of a date, °C d above the crop's starting base; null where not known. */
  units(date: string): number | null;
  /** Those of a day that was, as measured here or at the station; null where not known. */
  measured(day: string): number | null;
  /** Chance of a wet day at a date; null where not known. */
  wet(date: string): number | null;
  /** Mean temperature of the four warm months, °C; null where not known. */
  warmMean: number | null;
  readonly from: {
    readonly units: 'measured' | 'station' | null;
    readonly wet: 'measured' | 'station' | null;
  };
  /** Units of every day of the record, at the place. */
  readonly record: ReadonlyMap<string, number>;
};

const WARM = {
  north: ['05', '06', '07', '08'],
  south: ['11', '12', '01', '02'],
} as const;

type Extremes = { day: string; min: number | null; max: number | null };

/** What a place's dates usually bring, from a station fitted to it or from its own years. */
export function makeClimate(
  site: SiteRecord,
  own: readonly Day[],
  crop: string,
  calendar: Calendar,
  today: string,
): Climate {
  const base = startingBase(crop);
  const unitsOf = ({ min, max }: Extremes) =>
    min === null || max === null || max < min || base === null
      ? null
      : degreeDaysSine({ min, max, lower: base.lower, upper: base.upper });
  const mine = new Map(own.map((day) => [day.day, unitsOf(day)]));
  const there = new Map(site.days.map((day) => [day.day, unitsOf(day)]));
  const shared = [...mine]
    .flatMap(([day, place]) => {
      const outdoors = there.get(day) ?? null;
      return place === null || outdoors === null ? [] : [{ outdoors, place }];
    })
    .slice(-LEARNED);
  const here = placeLine(shared);
  const record = new Map<string, number>();
  for (const [day, units] of there) {
    if (units === null) continue;
    record.set(day, here?.(units) ?? units);
  }
  for (const [day, units] of mine) if (units !== null && day < today) record.set(day, units);
  const known = [...mine.values()].filter((units) => units !== null).length;
  const source = there.size > 0 ? 'station' : known >= ENOUGH_OWN ? 'measured' : null;
  const units = climateCalendar([...record].map(([day, value]) => ({ day, value })));

  const wetHere = own.flatMap(({ day, wetHours, unknownHours }) =>
    wetHours === null || (unknownHours > 6 && wetHours < WET_LEAVES)
      ? []
      : [{ day, value: wetHours >= WET_LEAVES ? 1 : 0 }],
  );
  const wetThere = site.days.flatMap(({ day, rain }) =>
    rain === null ? [] : [{ day, value: rain >= WET_RAIN ? 1 : 0 }],
  );
  const recent = wetHere.filter(({ day }) => day >= calendar.add(today, -RECENT) && day < today);
  const share = recent.reduce((sum, { value }) => sum + value, 0) / Math.max(1, recent.length);
  const lately = recent.length >= ENOUGH_RECENT ? () => share : () => null;
  const byDate =
    wetHere.length >= ENOUGH_OWN
      ? { from: 'measured' as const, at: climateCalendar(wetHere) }
      : wetThere.length >= ENOUGH_OWN
        ? { from: 'station' as const, at: climateCalendar(wetThere) }
        : { from: recent.length >= ENOUGH_RECENT ? ('measured' as const) : null, at: lately };
  const warm = new Set<string>(WARM[site.hemisphere]);
  const means = (source === 'measured' ? own : site.days).flatMap(({ day, min, max }) =>
    min === null || max === null || !warm.has(day.slice(5, 7)) ? [] : [(min + max) / 2],
  );
  return {
    units: (date) => (source === null ? null : units(date)),
    measured: (day) => record.get(day) ?? null,
    wet: byDate.at,
    warmMean:
      means.length < 60 ? null : means.reduce((sum, value) => sum + value, 0) / means.length,
    from: { units: source, wet: byDate.from },
    record,
  };
}
