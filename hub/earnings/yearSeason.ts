import type { YearSeason } from '../contract/index.ts';

/** Three calendar months each, from December (WMO No. 1203, meteorological seasons; from memory). */
const NORTH: readonly YearSeason[] = ['winter', 'spring', 'summer', 'autumn'];
const SOUTH: readonly YearSeason[] = ['summer', 'autumn', 'winter', 'spring'];

/** The season of a calendar day, and a name that tells it from those of other years. */
export function yearSeason(
  day: string,
  lat: number,
): { readonly season: YearSeason; readonly key: string } {
  const [year = 0, month = 1] = day.split('-').map(Number);
  const quarter = Math.floor((month % 12) / 3);
  const season = (lat < 0 ? SOUTH : NORTH)[quarter] ?? 'winter';
  // December belongs to the season of the year that follows.
  return { season, key: `${month === 12 ? year + 1 : year}-${quarter}` };
}
