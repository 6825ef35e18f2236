import type { Hemisphere } from '../../rules/frost/index.ts';
import { type NightLowOf, type SiteFrost, seasonDay, siteFrost } from '../../rules/frost/index.ts';
import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import type { Spots } from '../snapshot/index.ts';
import type { DayRow, StationRow, Store } from '../store/index.ts';
import { calmDifferences } from './calmNights.ts';
import { openSpot, ownNights } from './ownNights.ts';

const EARTH = 6371; // km, mean radius (IUGG)
const RADIANS = Math.PI / 180;
/** A record shorter than this says nothing of odds. Ours, for eight seasons and some gaps. */
const LONG_ENOUGH = 8 * 300; // days

export type SeasonParts = {
  readonly store: Store;
  readonly spots: Spots;
  readonly farm: () => Farm;
  readonly calendar: () => Calendar;
  /** Evenings already judged, by place and night. */
  readonly calm: Map<string, boolean>;
  readonly daysOf: (station: StationRow) => readonly DayRow[];
};

/** All that is known of the frosts of one place: its own nights, and a station's. */
export type SiteRecord = {
  readonly place: string;
  readonly spot: 'canopy' | 'air' | 'grass' | null;
  readonly hemisphere: Hemisphere;
  readonly own: readonly NightLowOf[];
  readonly station: (StationRow & { readonly distance: number }) | null;
  readonly days: readonly DayRow[];
  readonly differences: readonly number[];
  frost(threshold: number, side: 'first' | 'last'): SiteFrost;
};

/** Great-circle distance, km: haversine. */
export function distanceFrom(farm: Farm, { lat, lon }: { lat: number; lon: number }): number {
  const here = farm.file.farm;
  const [a, b] = [here.lat * RADIANS, lat * RADIANS];
  const across = Math.sin(((lon - here.lon) * RADIANS) / 2);
  const along = Math.sin((b - a) / 2);
  const square = along ** 2 + Math.cos(a) * Math.cos(b) * across ** 2;
  return 2 * EARTH * Math.asin(Math.min(1, Math.sqrt(square)));
}

/** The nearest station with a record long enough for odds; failing that, the longest. */
export function stationFor(store: Store, farm: Farm): SiteRecord['station'] {
  const all = store.stations.all().map((row) => ({
    ...row,
    distance: distanceFrom(farm, row),
    days: store.stations.extent(row.id).days,
  }));
  const long = all.filter(({ days }) => days >= LONG_ENOUGH);
  const [found] =
    long.length > 0
      ? long.sort((a, b) => a.distance - b.distance)
      : all.sort((a, b) => b.days - a.days);
  if (found === undefined) return null;
  const { days: _, ...station } = found;
  return station;
}

export function makeSiteRecord(parts: SeasonParts, place: string, now: number): SiteRecord {
  const { store, spots } = parts;
  const farm = parts.farm();
  const calendar = parts.calendar();
  const hemisphere: Hemisphere = farm.file.farm.lat < 0 ? 'south' : 'north';
  const spot = openSpot(spots, place);
  const own = spot === null ? [] : ownNights({ store, spots, farm, calendar }, place, spot, now);
  const station = stationFor(store, farm);
  // A clock set back, as in a replay, is told nothing of what was still to come.
  const name = calendar.dayOf(now);
  const days = station === null ? [] : parts.daysOf(station).filter(({ day }) => day <= name);
  const differences =
    spot === null || station === null
      ? []
      : calmDifferences(
          { spots, farm, calendar, calm: parts.calm },
          place,
          spot,
          own,
          new Map(days.map((day) => [day.day, day])),
        );
  const lows = days.map(({ day, min }) => ({ night: day, low: min }));
  const today = seasonDay(name, hemisphere).season;
  // The season that runs is not past: it tells of itself alone.
  const past = (nights: readonly NightLowOf[]) =>
    nights.filter(({ night }) => seasonDay(night, hemisphere).season < today);
  const found = new Map<string, SiteFrost>();
  return {
    ...{ place, spot, hemisphere, own, station, days, differences },
    frost(threshold, side) {
      const key = `${threshold} ${side}`;
      const made =
        found.get(key) ??
        siteFrost({
          own: past(own),
          station: station === null ? null : past(lows),
          ...{ differences, threshold, hemisphere, side },
        });
      found.set(key, made);
      return made;
    },
  };
}
