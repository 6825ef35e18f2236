import type { Day } from '../../hub/contract/index.ts';
import { addDays } from '../times.ts';

/** Columns for the year chart. `t` in seconds at UTC midnight of each calendar day. */
export type YearColumns = {
  readonly days: readonly string[];
  readonly t: number[];
  readonly mean: (number | null)[];
  readonly low: (number | null)[];
  readonly high: (number | null)[];
  readonly wet: (number | null)[];
};

/** Every calendar day from the first to the last, a day the hub did not give as one not known. */
export function yearColumns(days: readonly Day[]): YearColumns {
  const columns: YearColumns & { days: string[] } = {
    days: [],
    t: [],
    mean: [],
    low: [],
    high: [],
    wet: [],
  };
  const byDay = new Map(days.map((day) => [day.day, day]));
  const names = [...byDay.keys()].sort();
  const [first] = names;
  const last = names.at(-1);
  if (first === undefined || last === undefined) return columns;
  for (let name = first; name <= last; name = addDays(name, 1)) {
    const day = byDay.get(name);
    columns.days.push(name);
    columns.t.push(Date.parse(`${name}T00:00:00Z`) / 1000);
    columns.mean.push(day?.mean ?? null);
    columns.low.push(day?.min ?? null);
    columns.high.push(day?.max ?? null);
    columns.wet.push(day?.wetHours ?? null);
  }
  return columns;
}

export type Extreme = { readonly value: number; readonly day: string };

/** What a reader of the chart would look for, as facts for a sentence. */
export function yearFacts({ days, low, high, mean, wet }: YearColumns): {
  known: number;
  missing: number;
  coldest: Extreme | null;
  warmest: Extreme | null;
  wetHours: number | null;
} {
  const known = mean.filter((value) => value !== null).length;
  const told = wet.filter((value) => value !== null);
  return {
    known,
    missing: days.length - known,
    coldest: extreme(days, low, (a, b) => a < b),
    warmest: extreme(days, high, (a, b) => a > b),
    wetHours: told.length === 0 ? null : told.reduce((sum, hours) => sum + hours, 0),
  };
}

function extreme(
  days: readonly string[],
  values: readonly (number | null)[],
  beats: (a: number, b: number) => boolean,
): Extreme | null {
  let best: Extreme | null = null;
  for (const [i, value] of values.entries()) {
    if (value === null || (best && !beats(value, best.value))) continue;
    best = { value, day: days[i] ?? '' };
  }
  return best;
}
