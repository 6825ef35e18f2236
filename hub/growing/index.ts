import { placeLine } from '../../rules/batches/index.ts';
import type { Batches } from '../batches/index.ts';
import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import { stationFor } from '../season/index.ts';
import type { Snapshots } from '../snapshot/index.ts';
import type { DayRow, Rollup, Store } from '../store/index.ts';
import { type Ahead, aheadOf } from './aheadOf.ts';
import { type CropBase, toldBase } from './cropBase.ts';
import { makeForetold } from './foretoldUnits.ts';
import { type HeatRule, ruleKey } from './heatRule.ts';
import { hourlyDays, hoursOfPlace } from './hourlyDays.ts';
import { makeHeat } from './makeHeat.ts';
import { type PastBatch, pastBatches } from './pastBatches.ts';
import { type PlaceClimate, placeClimate } from './placeClimate.ts';

export type { Ahead } from './aheadOf.ts';
export type { CropBase } from './cropBase.ts';
export type { HeatRule } from './heatRule.ts';
export type { Lived } from './makeHeat.ts';
export type { PastBatch } from './pastBatches.ts';
export type { PlaceClimate } from './placeClimate.ts';

export type GrowingParts = {
  readonly store: Store;
  readonly farm: () => Farm;
  readonly calendar: () => Calendar;
  readonly snapshots: Snapshots;
  readonly batches: Batches;
  readonly now: () => number;
};
export type Growing = ReturnType<typeof makeGrowing>;

/** What a crop took in past batches, and what its heat units are counted from. */
export type CropGrowing = { readonly base: CropBase; readonly past: readonly PastBatch[] };

/** Heat that batches went through and will; what crops need of it; when a batch is ready. */
export function makeGrowing(parts: GrowingParts) {
  const { store, farm, calendar, snapshots, batches, now } = parts;
  const pieces = { store, spots: snapshots.spots, farm };
  const read = { key: '', days: [] as readonly DayRow[] };
  const hours = new Map<string, { key: string; hours: readonly Rollup[] }>();
  const climates = new Map<string, { key: string; climate: PlaceClimate }>();
  /** Counts changes of what was measured before today. */
  let changes = 0;

  const stationDays = (today: string): readonly DayRow[] => {
    const station = stationFor(store, farm());
    const key = `${station?.id}@${station?.importedAt} ${today}`;
    if (read.key !== key) {
      read.key = key;
      const all = station === null ? [] : store.stations.days(station.id);
      // A clock set back, as in a replay, is told nothing of what was still to come.
      read.days = all.filter(({ day }) => day < today);
    }
    return read.days;
  };

  const hoursOf = (place: string, today: string) => {
    const key = `${today} ${changes}`;
    const known = hours.get(place);
    if (known?.key === key) return known.hours;
    const until = calendar().bounds(today).begins;
    const made = hoursOfPlace(pieces, place, 0, until);
    hours.set(place, { key, hours: made });
    return made;
  };

  const climateOf = (place: string, rule: HeatRule): PlaceClimate => {
    const today = calendar().dayOf(now());
    const station = stationDays(today);
    const key = `${read.key} ${changes}`;
    const name = `${place} ${ruleKey(rule)}`;
    const known = climates.get(name);
    if (known?.key === key) return known.climate;
    const own = hourlyDays(hoursOf(place, today), rule, calendar());
    const climate = placeClimate(own, station, rule, calendar(), today);
    climates.set(name, { key, climate });
    return climate;
  };

  const heat = makeHeat({ ...pieces, calendar, now }, (place, rule, day) =>
    climateOf(place, rule).guess(day),
  );
  const foretold = makeForetold(store, calendar);

  /** Outdoors to a place, by the last days both were measured. */
  const lineTo = (place: string, rule: HeatRule) => {
    const outside = farm().outside?.id;
    if (outside === undefined) return null;
    const [there, here] = [climateOf(outside, rule), climateOf(place, rule)];
    const today = calendar().dayOf(now());
    const days = Array.from({ length: 60 }, (_, back) => calendar().add(today, back - 60));
    return placeLine(days.map((day) => ({ outdoors: there.own(day), place: here.own(day) })));
  };

  const ahead = (place: string, rule: HeatRule, fromDay: string, days: number): Ahead => {
    const climate = climateOf(place, rule);
    const told = foretold(place, rule, climate, () => lineTo(place, rule), now());
    return aheadOf(climate, told, calendar(), { fromDay, days, today: calendar().dayOf(now()) });
  };

  snapshots.listen((place, from, to) => {
    if (place === null || from < calendar().bounds(calendar().dayOf(now())).begins) changes += 1;
    heat.drop(place, from, to);
  });

  return {
    heat: {
      /** Heat and light that plants went through at the places they stood at. */
      lived: heat.lived,
      /** Heat that days to come bring to a place, °C d a day: expected, and as years before did. */
      ahead,
    },
    climate: climateOf,
    /** What past batches of a crop took, and from which temperature it is counted. */
    crop(crop: string): CropGrowing {
      const base = toldBase(farm(), crop);
      const own = batches.all().filter((batch) => batch.crop === crop);
      return { base, past: pastBatches(own, heat, base) };
    },
  };
}
