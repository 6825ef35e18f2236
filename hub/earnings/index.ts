import type { Batch } from '../batches/index.ts';
import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import type { Lot } from '../lots/index.ts';
import type { Pick } from '../picks/index.ts';
import { batchUnit } from './batchUnit.ts';
import { type Asked, pickOnAnswers } from './pickOnAnswers.ts';
import { pickUnit } from './pickUnit.ts';
import { type Stop, stopAnswers } from './stopAnswers.ts';
import { storeLosses } from './storeLosses.ts';
import type { Unit } from './unit.ts';
import { type Grouped, worthGroups } from './worthGroups.ts';
import { yearSeason } from './yearSeason.ts';

export type { Asked } from './pickOnAnswers.ts';
export type { Stop } from './stopAnswers.ts';
export type { Figure, Unit } from './unit.ts';
export { CONFIDENCE, type Grouped } from './worthGroups.ts';

export type EarningsParts = {
  readonly batches: readonly Batch[];
  readonly picks: readonly Pick[];
  readonly lots: readonly Lot[];
  readonly farm: Farm;
  readonly calendar: Calendar;
  readonly now: number;
  /** Days of the farm, the last one with it: of the end of a batch, or of a picking. */
  readonly from?: string | undefined;
  readonly to?: string | undefined;
};

export type Earnings = {
  readonly units: readonly Unit[];
  readonly groups: readonly Grouped[];
  readonly stops: readonly Stop[];
  readonly pickOns: readonly Asked[];
  /** Batches that still stand. */
  readonly growing: number;
};

/** What everything that was written down comes to in money. */
export function earnings(parts: EarningsParts): Earnings {
  const { batches, picks, lots, farm, calendar, now, from, to } = parts;
  const { lat, wage } = farm.file.farm;
  const seasonAt = (t: number) => yearSeason(calendar.dayOf(t), lat);
  const store = storeLosses(lots, (t) => seasonAt(t).key);
  const byId = new Map(batches.map((batch) => [batch.id, batch]));
  const about = (crop: string, begun: number, harvested: number) => ({
    crop: farm.crop(crop),
    season: seasonAt(begun).season,
    storeShare: store.of(crop, harvested),
  });
  const grown = batches.flatMap((batch) => {
    const harvested = batch.cuts.at(-1)?.at ?? batch.sownAt;
    return (
      batchUnit(batch, {
        ...about(batch.crop, batch.sownAt, harvested),
        find: (id) => byId.get(id),
      }) ?? []
    );
  });
  const picked = picks.flatMap((pick) => pickUnit(pick, about(pick.crop, pick.at, pick.at)) ?? []);
  const units = [...grown, ...picked].filter((unit) => {
    const day = calendar.dayOf(unit.to);
    return day >= (from ?? day) && day <= (to ?? day);
  });
  const groups = worthGroups(units, wage);
  return {
    units: units.sort((a, b) => b.to - a.to),
    groups,
    stops: stopAnswers(groups, (crop) => farm.crop(crop)?.price ?? null),
    // The season that runs, whatever days were asked for.
    pickOns: pickOnAnswers(picks, new Map(picked.map((unit) => [unit.id, unit])), {
      ...{ now, wage, calendar, crop: (id) => farm.crop(id) },
    }),
    growing: batches.filter(({ state }) => state === 'growing').length,
  };
}
