import { firstFrostNights, nextFrostNights, seasonDay } from '../../rules/frost/index.ts';
import { dayAt, dayNumber } from '../../rules/heat/index.ts';
import type { SiteRecord } from './siteRecord.ts';

/**
 * Chance of each coming night that it is the next at or below a limit at a place. Before the first
 * frost of an autumn by the season's odds; at any other time by how past years went on from this
 * date. null with too few years.
 */
export function frostNights(
  site: SiteRecord,
  limit: number,
  today: string,
  nights: number,
): readonly number[] | null {
  const { season, day, half } = seasonDay(today, site.hemisphere);
  const { history, fitted, atStation } = site.frost(limit, 'first');
  const came = site.own.some(
    ({ night, low }) =>
      low !== null && low <= limit && seasonDay(night, site.hemisphere).season === season,
  );
  if (half === 'autumn' && !came) {
    const chances = firstFrostNights(history, day, nights);
    if (chances !== null) return chances;
  }
  if (fitted.way === 'own' || site.station === null)
    return nextFrostNights(site.own, limit, today, nights);
  const lows = site.days.map(({ day: night, min }) => ({ night, low: min }));
  // Where dates were moved by days, the station's calendar is moved back by as many.
  const moved =
    fitted.way === 'dates' ? dayAt(dayNumber(today) - Math.round(fitted.by ?? 0)) : today;
  return nextFrostNights(lows, atStation ?? limit, moved, nights);
}
