import type { YearSeason } from '../contract/index.ts';

/** Three calendar months each, from December (WMO No. 1203, meteorological seasons; from memory). */
const NORTH: readonly YearSeason[] = ['winter', 'spring', 'summer', 'autumn'];
const MONTHS = 3;
const YEAR = 12; // months

export type SeasonSpan = {
  /** null: the last twelve months. */
  readonly season: YearSeason | null;
  /** Of its last day: a winter has the year it ends in. */
  readonly year: number;
  readonly from: string;
  readonly to: string;
};

/**
 * The season that runs, up to `today`, the `count` before it, and the last twelve months.
 * @param today day of the farm
 * @param lat south of the equator seasons are half a year apart
 */
export function seasonsBack(today: string, lat: number, count = 4): SeasonSpan[] {
  const [year = 0, month = 1, day = 1] = today.split('-').map(Number);
  const now = year * YEAR + month - 1; // months; December, March, June and September begin one
  const began = now - ((now + 1) % MONTHS);
  const spans = Array.from({ length: count + 1 }, (_, back): SeasonSpan => {
    const first = began - back * MONTHS;
    const quarter = ((first + 1) % YEAR) / MONTHS;
    const season = NORTH[(quarter + (lat < 0 ? 2 : 0)) % 4] ?? 'winter';
    const to = back === 0 ? today : dayOn(first + MONTHS, 0);
    return { season, year: Number(to.slice(0, 4)), from: dayOn(first, 1), to };
  });
  return [...spans, { season: null, year, from: dayOn(now - YEAR, day + 1), to: today }];
}

/** A day of a month counted from the year 0; the day 0 is the last of the month before. */
const dayOn = (months: number, day: number) =>
  new Date(Date.UTC(Math.floor(months / YEAR), months % YEAR, day)).toISOString().slice(0, 10);
