import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import { stationFor } from '../season/index.ts';
import type { DayRow, Store } from '../store/index.ts';
import { type Ahead, aheadOf } from './aheadOf.ts';
import { makeForetold } from './foretoldUnits.ts';
import { type HeatRule, ruleKey } from './heatRule.ts';
import { type PlaceClimate, placeClimate } from './placeClimate.ts';
import type { PlaceHistory } from './placeHistory.ts';
import { placeMap } from './placeMap.ts';

export type ClimateParts = {
  readonly store: Store;
  readonly farm: () => Farm;
  readonly calendar: () => Calendar;
  readonly now: () => number;
  readonly history: PlaceHistory;
};

/** What dates bring to places, and what the coming days may; made once a day for each way of counting. */
export function makeClimates({ store, farm, calendar, now, history }: ClimateParts) {
  const foretold = makeForetold(store, calendar);
  const station = { key: '', days: [] as readonly DayRow[] };
  const climates = new Map<string, { key: string; climate: PlaceClimate }>();
  const aheads = new Map<string, { key: string; ahead: Ahead }>();
  const todayOf = () => calendar().dayOf(now());

  const stationDays = (today: string): readonly DayRow[] => {
    const names = store.stations.all().map(({ id, importedAt }) => `${id}@${importedAt}`);
    const key = [today, ...names].join(' ');
    if (station.key !== key) {
      const found = names.length === 0 ? null : stationFor(store, farm());
      station.key = key;
      // A clock set back, as in a replay, is told nothing of what was still to come.
      station.days =
        found === null ? [] : store.stations.days(found.id).filter(({ day }) => day < today);
    }
    return station.days;
  };

  const climate = (place: string, rule: HeatRule): PlaceClimate => {
    const today = todayOf();
    const there = stationDays(today);
    const key = `${station.key} ${history.changes()}`;
    const name = `${place} ${ruleKey(rule)}`;
    const known = climates.get(name);
    if (known?.key === key) return known.climate;
    const made = placeClimate(history.days(place, rule, today), there, rule, calendar(), today);
    climates.set(name, { key, climate: made });
    return made;
  };

  /** Outdoors to a place, by the days both were measured. */
  const mapTo = (place: string, rule: HeatRule) => {
    const outside = farm().outside?.id;
    if (outside === undefined) return null;
    const there = new Map(climate(outside, rule).own.map((day) => [day.day, day]));
    return placeMap(climate(place, rule).own, there, rule);
  };

  return {
    climate,
    ahead(place: string, rule: HeatRule, fromDay: string, days: number): Ahead {
      const usual = climate(place, rule);
      // Batches that stand together ask for the same.
      const issue = `${store.foretold.version()} ${Math.floor(now() / 3_600_000)}`;
      const key = `${station.key} ${history.changes()} ${issue} ${fromDay} ${days}`;
      const name = `${place} ${ruleKey(rule)}`;
      const known = aheads.get(name);
      if (known?.key === key) return known.ahead;
      const told = foretold(place, rule, usual, () => mapTo(place, rule), now());
      const made = aheadOf(usual, told, calendar(), { fromDay, days, today: todayOf() });
      aheads.set(name, { key, ahead: made });
      return made;
    },
  };
}
