import type { Calendar } from '../clock.ts';
import type { FruitCount, PatchTerms } from '../contract/index.ts';
import type { Entry, Store } from '../store/index.ts';
import type { Climate } from './climate.ts';

/** How far fruit of a stage is on its way from flower to ripe. Ours, from no source. */
const DONE: Readonly<Record<FruitCount['cohorts'][number]['stage'], number>> = {
  ...{ ripe: 1, turning: 0.9, green: 0.5, flower: 0 },
};
/** A count older than this says nothing of today. Ours. */
const FRESH = 28; // days
/** Fruit that ripened longer ago than this has been picked, or is lost. Ours. */
const HANGS_RIPE = 7; // days

export type Counted = {
  readonly day: string;
  readonly who: string;
  readonly cohorts: readonly (FruitCount['cohorts'][number] & {
    /** Heat units still to come; null when nobody can say. */
    readonly units: number | null;
    /** Picked, or lost, since the count. */
    readonly gone: boolean;
  })[];
};

export type PatchEntries = { readonly fruit: Entry | null; readonly terms: Entry | null };

/** The latest count of a patch by the day it was made, and its latest figures. */
export function patchEntries(store: Store, place: string): PatchEntries {
  const of = (what: string) =>
    store.journal.between(what, 0, Number.MAX_SAFE_INTEGER).filter((one) => one.place === place);
  let fruit: Entry | null = null;
  for (const one of of('fruit')) if (fruit === null || dayOf(one) >= dayOf(fruit)) fruit = one;
  return { fruit, terms: of('patch-terms').at(-1) ?? null };
}
const dayOf = ({ body }: Entry) => (body as { counted: string }).counted;

export const termsOf = ({ terms }: PatchEntries): PatchTerms => (terms?.body ?? {}) as PatchTerms;

/** What was counted, moved on to today; null when nothing was, or too long ago. */
export function countedFruit(
  { fruit }: PatchEntries,
  climate: Climate,
  flowerUnits: number | null,
  calendar: Calendar,
  today: string,
): { readonly counted: Counted | null; readonly stale: boolean } {
  if (fruit === null) return { counted: null, stale: false };
  const { counted: day, cohorts } = fruit.body as { counted: string } & FruitCount;
  const past = (from: string) => {
    const days: number[] = [];
    for (let each = calendar.add(from, 1); each <= today; each = calendar.add(each, 1)) {
      const units = climate.measured(each) ?? climate.units(each);
      if (units === null) return null;
      days.push(units);
    }
    return days;
  };
  return {
    counted: {
      ...{ day, who: fruit.who },
      cohorts: cohorts.map((each) => {
        const needed =
          each.stage === 'ripe'
            ? 0
            : flowerUnits === null
              ? null
              : flowerUnits * (each.flowered === undefined ? 1 - DONE[each.stage] : 1);
        const days = past(each.flowered ?? day);
        if (needed === null || days === null) return { ...each, units: null, gone: false };
        let left = needed;
        let ripeFor = needed <= 0 ? days.length : 0;
        for (const [index, units] of days.entries()) {
          if (left <= 0) break;
          left -= units;
          if (left <= 0) ripeFor = days.length - 1 - index;
        }
        return { ...each, units: Math.max(0, left), gone: left <= 0 && ripeFor > HANGS_RIPE };
      }),
    },
    stale: day < calendar.add(today, -FRESH),
  };
}
