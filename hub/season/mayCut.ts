import { mayCutBack } from '../../rules/batches/index.ts';
import type { Input } from '../../rules/decide/index.ts';
import { seasonDay } from '../../rules/frost/index.ts';
import { dayLength, dayNumber, dayOfYear } from '../../rules/heat/index.ts';
import type { PatchTerms } from '../contract/index.ts';
import type { SiteRecord } from './siteRecord.ts';

/** Whether cutting a patch back may be offered now, and the numbers that say so. */
export function mayCut(site: SiteRecord, terms: PatchTerms, today: string, lat: number) {
  const { season } = seasonDay(today, site.hemisphere);
  const lows = site.own
    .filter(({ night }) => seasonDay(night, site.hemisphere).season === season)
    .map(({ low }) => low);
  const daylight = dayLength(lat, dayOfYear(today));
  const since =
    terms.lastPicking === undefined || terms.lastPicking > today
      ? null
      : Math.min(1000, dayNumber(today) - dayNumber(terms.lastPicking));
  const may = mayCutBack({
    juneBearing: terms.bearing === undefined ? null : terms.bearing === 'june',
    daysSinceLastPicking: since,
    leavesFlatAndRed: terms.leavesFlatAndRed ?? null,
    lows,
    dayLength: daylight,
    growerInsists: terms.insists === true,
  });
  const known = lows.filter((low) => low !== null);
  const inputs: Input[] = [
    { what: 'bearing', value: terms.bearing ?? null, unit: '' },
    { what: 'days-since-picking', value: since, unit: 'd' },
    {
      what: 'leaves-flat-and-red',
      value: terms.leavesFlatAndRed === undefined ? null : terms.leavesFlatAndRed ? 'yes' : 'no',
      unit: '',
    },
    { what: 'hard-frosts', value: known.filter((low) => low < -4).length, unit: '' },
    { what: 'day-length', value: Math.round(daylight * 100) / 100, unit: 'h' },
    { what: 'grower-insists', value: terms.insists === true ? 'yes' : 'no', unit: '' },
  ];
  return { may, inputs };
}
