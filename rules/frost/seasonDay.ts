import { dayNumber } from '../heat/index.ts';

export type Hemisphere = 'north' | 'south';

/** A day within a frost season, which runs from midsummer to midsummer. */
export type SeasonDay = {
  /** Year in which the season began. */
  readonly season: number;
  /** Days since 1 July (north) or 1 January (south); the first is 0. */
  readonly day: number;
  /** Before midwinter, or after it. */
  readonly half: 'autumn' | 'spring';
};

/** First season day after midwinter: 1 January in the north, 1 July in the south (no leap day). */
export const MIDWINTER = { north: 184, south: 181 } as const;

/**
 * Where a calendar day (`2025-10-15`) stands in the frost season, so that an autumn's frosts and
 * the spring's after it count on. Two days of one season differ by as much as the days do.
 * @throws RangeError for what is no calendar day
 */
export function seasonDay(day: string, hemisphere: Hemisphere): SeasonDay {
  const number = dayNumber(day);
  const year = Number(day.slice(0, 4));
  const begins = (season: number) =>
    dayNumber(`${String(season).padStart(4, '0')}-${hemisphere === 'north' ? '07' : '01'}-01`);
  const season = number < begins(year) ? year - 1 : year;
  const since = number - begins(season);
  const half = since < MIDWINTER[hemisphere] ? 'autumn' : 'spring';
  return { season, day: since, half };
}
