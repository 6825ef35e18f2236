import type { SpotPrior } from '../../rules/decide/index.ts';
import { stationPrior } from '../../rules/frost/index.ts';
import type { Calendar } from '../clock.ts';
import type { SiteRecord } from './siteRecord.ts';

/** Nights this many days to either side of the date count. Ours. */
const AROUND = 10;
const DAY = 86_400_000; // ms

/** What a station's past nights around this date say of a night at the place's spot in the open. */
export function spotPrior(site: SiteRecord, calendar: Calendar, now: number): SpotPrior | null {
  if (site.station === null) return null;
  const today = calendar.dayOf(now);
  const lows = site.days.flatMap(({ day, min }) =>
    min !== null && day.slice(0, 4) < today.slice(0, 4) && apart(day, today) <= AROUND ? [min] : [],
  );
  const prior = stationPrior(lows, site.differences);
  return prior && { ...prior, station: site.station.name };
}

/** Days between two dates, whatever their years. */
function apart(a: string, b: string): number {
  const year = Number(b.slice(0, 4));
  const at = (of: number) => Date.parse(`${of}-${a.slice(5)}T00:00:00Z`);
  const to = Date.parse(`${b}T00:00:00Z`);
  const days = [year - 1, year, year + 1].map((of) => Math.abs(at(of) - to) / DAY);
  return Math.min(...days.filter((one) => !Number.isNaN(one))); // 29 February is in few years
}
