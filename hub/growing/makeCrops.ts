import type { Batch, Batches } from '../batches/index.ts';
import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import { toldBase } from './cropBase.ts';
import { ruleKey } from './heatRule.ts';
import type { Heat } from './makeHeat.ts';
import { type LearnedBase, ownBase, seasonBegins } from './ownBase.ts';
import { type PastBatch, pastBatches } from './pastBatches.ts';
import type { PlaceHistory } from './placeHistory.ts';

/** What a crop took in past batches, and what its heat units are counted from. */
export type CropGrowing = { readonly base: LearnedBase; readonly past: readonly PastBatch[] };

export type CropParts = {
  readonly farm: () => Farm;
  readonly calendar: () => Calendar;
  readonly now: () => number;
  readonly batches: Batches;
  readonly heat: Heat;
  readonly history: PlaceHistory;
};

/** What is learned of each crop, kept until something is entered or measured that it depends on. */
export function makeCrops({ farm, calendar, now, batches, heat, history }: CropParts) {
  const kept = new Map<string, { key: string; growing: CropGrowing }>();
  /** A base is searched for on thousands of hours: never twice on the same. */
  const scanned = new Map<string, number | null>();
  let changes = 0;

  /** Temperatures a batch went through, one an hour. */
  const hoursOf = ({ stays, sownAt }: Batch, to: number) => {
    const today = calendar().dayOf(now());
    return stays.flatMap(({ place, from }, index) => {
      const ends = Math.min(to, stays[index + 1]?.from ?? to);
      return history.between(place, index === 0 ? sownAt : from, ends, today);
    });
  };

  return function crop(id: string): CropGrowing {
    const told = toldBase(farm(), id);
    const today = calendar().dayOf(now());
    const { lat } = farm().file.farm;
    const key = `${batches.newest()} ${history.changes()} ${today} ${ruleKey(told)} ${lat}`;
    const known = kept.get(id);
    if (known?.key === key) return known.growing;
    if (changes !== history.changes()) scanned.clear();
    changes = history.changes();
    const own = batches.all().filter((batch) => batch.crop === id && batch.state !== 'withdrawn');
    const first = pastBatches(own, heat, told, lat, calendar());
    const begins = (day: string) => seasonBegins(lat, day, calendar());
    const base = ownBase(told, own, first, {
      hoursOf,
      seasonOf: (t) => begins(calendar().dayOf(t)),
      season: begins(today),
      scanned,
    });
    const same = ruleKey(base) === ruleKey(told);
    const past = same ? first : pastBatches(own, heat, base, lat, calendar());
    const growing = { base, past };
    kept.set(id, { key, growing });
    return growing;
  };
}
