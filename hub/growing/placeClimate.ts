import { climateCalendar, placeLine } from '../../rules/batches/index.ts';
import { degreeDaysSine } from '../../rules/heat/index.ts';
import type { Calendar } from '../clock.ts';
import type { DayRow } from '../store/index.ts';
import { type HeatRule, limitsOf } from './heatRule.ts';

const ENOUGH_OWN = 300; // days known with which an own record tells of dates; ours, as for patches
const NEAR = 7; // days either side of a date; common practice, no source
const FEWEST_NEAR = 3; // days from which a guess is made; ours
const LATELY = 14; // days; ours

/** What a place's dates bring, °C d a day, by one rule of counting. */
export type PlaceClimate = {
  readonly from: 'measured' | 'station' | null;
  /** Usual units of a date; null where not known. */
  units(date: string): number | null;
  /** Those of a day that was: measured here, else from the station; null where not known. */
  measured(day: string): number | null;
  /** Those measured here alone. */
  own(day: string): number | null;
  /** A day that was not measured: the station's day, else its date, else the days about it. */
  guess(day: string): { readonly degreeDays: number; readonly sd: number } | null;
  /** Mean of the last days; null where fewer than three are known. */
  readonly lately: number | null;
  /** Years with a day in the record, oldest first. */
  readonly years: readonly number[];
};

/**
 * @param own units of days of the place, null where not known; oldest first
 * @param station its days, up to today
 */
export function placeClimate(
  own: readonly { readonly day: string; readonly units: number | null }[],
  station: readonly DayRow[],
  rule: HeatRule,
  calendar: Calendar,
  today: string,
): PlaceClimate {
  const there = new Map(station.map((row) => [row.day, sineUnits(row, rule)]));
  const mine = new Map(own.map(({ day, units }) => [day, units]));
  const shared = [...mine].flatMap(([day, place]) => {
    const outdoors = there.get(day) ?? null;
    return place === null || outdoors === null ? [] : [{ outdoors, place }];
  });
  const line = placeLine(shared);
  const mapped = new Map<string, number>();
  for (const [day, units] of there)
    if (units !== null) mapped.set(day, line === null ? units : line(units));
  const record = new Map(mapped);
  for (const [day, units] of mine) if (units !== null && day < today) record.set(day, units);
  const known = [...mine.values()].filter((units) => units !== null).length;
  const from = there.size >= ENOUGH_OWN ? 'station' : known >= ENOUGH_OWN ? 'measured' : null;
  const ofDate = climateCalendar([...record].map(([day, value]) => ({ day, value })));
  const missed = shared.map(({ outdoors, place }) => place - (line?.(outdoors) ?? outdoors));
  const lineSd = spreadOf(missed.slice(-21));

  const about = (day: string) => {
    const near: number[] = [];
    for (let away = -NEAR; away <= NEAR; away++) {
      const units = mine.get(calendar.add(day, away)) ?? null;
      if (units !== null) near.push(units);
    }
    return near;
  };
  const last = Array.from({ length: LATELY }, (_, back) => calendar.add(today, -1 - back)).flatMap(
    (day) => mine.get(day) ?? [],
  );
  return {
    from,
    units: (date) => (from === null ? null : ofDate(date)),
    measured: (day) => record.get(day) ?? null,
    own: (day) => mine.get(day) ?? null,
    guess(day) {
      const told = line === null ? undefined : mapped.get(day);
      if (told !== undefined && lineSd !== null) return { degreeDays: told, sd: lineSd };
      const near = about(day);
      if (near.length >= FEWEST_NEAR) return { degreeDays: meanOf(near), sd: spreadOf(near) ?? 0 };
      const usual = from === null ? null : ofDate(day);
      // Without days about it: a day is off its date's mean by about half of it. Ours.
      return usual === null ? null : { degreeDays: usual, sd: usual / 2 };
    },
    lately: last.length < FEWEST_NEAR ? null : meanOf(last),
    years: [...new Set([...record.keys()].map((day) => Number(day.slice(0, 4))))].sort(
      (a, b) => a - b,
    ),
  };
}

const meanOf = (values: readonly number[]) =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

function spreadOf(values: readonly number[]): number | null {
  if (values.length < FEWEST_NEAR) return null;
  const mean = meanOf(values);
  return Math.sqrt(
    values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1),
  );
}

/** Of a day of which only the extremes are known; null where they are not, or make no sense. */
export function sineUnits(
  { min, max }: { readonly min: number | null; readonly max: number | null },
  rule: HeatRule,
): number | null {
  if (min === null || max === null || max < min) return null;
  return degreeDaysSine({ min, max, ...limitsOf(rule) });
}
