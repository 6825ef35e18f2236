import { type PastAutumn, stopBacktest, type TriedAutumn } from '../../rules/batches/index.ts';
import { seasonDay } from '../../rules/frost/index.ts';
import type { Calendar } from '../clock.ts';
import type { Backtest } from '../contract/index.ts';
import type { PatchFacts } from './patchFacts.ts';
import type { SiteRecord } from './siteRecord.ts';

// Autumns are tried from 1 September to midwinter, in the south from 1 March. Ours.
const BETWEEN = { north: [62, 183], south: [59, 180] } as const;
const USUAL_MASS = 5; // kg a week where nobody counted; ours
const FEWEST = 9; // autumns: eight others for the odds of each
const KNOWN = 0.8; // share of an autumn's days whose warmth has to be known; ours
const NEAR = 7; // days; as in stopBacktest

type Result = NonNullable<Backtest['result']>;

/** Why there is nothing to try, or the slices that try it. */
export function tryOut(
  site: SiteRecord,
  facts: PatchFacts,
  calendar: Calendar,
):
  | { readonly why: string }
  | { readonly of: number; readonly slices: Generator<TriedAutumn>; result(): Result } {
  const { flowerUnits, figures, counted, climate } = facts;
  const [from, to] = BETWEEN[site.hemisphere];
  const seasons = site.frost(facts.now.damage, 'first').seasons;
  const units = new Map<number, (number | null)[]>();
  for (const [day, value] of climate.record) {
    const { season, day: at } = seasonDay(day, site.hemisphere);
    const row = units.get(season) ?? new Array<number | null>(366).fill(null);
    row[at] = value;
    units.set(season, row);
  }
  const autumns: PastAutumn[] = seasons.flatMap(({ season, day }) => {
    const row = units.get(season);
    const seen = row?.slice(from, to).filter((value) => value !== null).length ?? 0;
    return row === undefined || seen < KNOWN * (to - from)
      ? []
      : [{ season, frost: day, units: row }];
  });
  if (autumns.length < FEWEST || autumns.every(({ frost }) => frost === null))
    return { why: autumns.length < FEWEST ? 'frost-years' : 'no-frost-years' };
  if (flowerUnits === null) return { why: 'climate-of-the-place' };
  if (figures.price === null) return { why: 'price' };
  const masses = (counted?.cohorts ?? []).map(({ kg }) => kg).filter((kg) => kg > 0);
  const mass =
    masses.length === 0 ? USUAL_MASS : masses.reduce((sum, kg) => sum + kg, 0) / masses.length;
  const wets = facts.wet.filter((chance) => chance !== null);
  const autumnWet = climate.wet(`2001-${site.hemisphere === 'north' ? '10' : '04'}-15`);
  const tried: TriedAutumn[] = [];
  const patch = {
    ...{ mass, flowerUnits, from, to, rotWet: figures.rotWet, rotDry: figures.rotDry },
    wetChance: autumnWet ?? wets[0] ?? 0,
    margin: figures.price - (figures.minutesPerKg * figures.wage) / 60,
    perPicking: (figures.minutesPerPicking * figures.wage) / 60,
    perDay: figures.perAutumnDay,
  };
  const { season: thisSeason } = seasonDay(facts.today, site.hemisphere);
  const begins = `${thisSeason}-${site.hemisphere === 'north' ? '07' : '01'}-01`;
  const dated = (day: number) => calendar.add(begins, Math.round(day));
  function* slices() {
    for (const each of stopBacktest(autumns, patch)) {
      tried.push(each);
      yield each;
    }
  }
  return {
    of: autumns.length,
    slices: slices(),
    result: () => summary(tried, dated),
  };
}

function summary(tried: readonly TriedAutumn[], dated: (day: number) => string): Result {
  const n = Math.max(1, tried.length);
  const mean = (of: (each: TriedAutumn) => number) =>
    Math.round((100 * tried.reduce((sum, each) => sum + of(each), 0)) / n) / 100;
  const count = (of: (each: TriedAutumn) => string, outcome: string) =>
    tried.filter((each) => of(each) === outcome).length;
  const outcomes = (of: (each: TriedAutumn) => string) => ({
    ...{ near: count(of, 'near'), early: count(of, 'early'), late: count(of, 'late') },
  });
  return {
    seasons: tried.length,
    first: Math.min(...tried.map(({ season }) => season)),
    last: Math.max(...tried.map(({ season }) => season)),
    within: NEAR,
    rule: { ...outcomes(({ outcome }) => outcome), money: mean(({ money }) => money) },
    averageDate: {
      ...outcomes(({ average }) => average.outcome),
      money: mean(({ average }) => average.money),
      day: dated(mean(({ averageDay }) => averageDay)),
    },
    foresight: mean(({ foresight }) => foresight),
    years: tried.map(({ season, stop, frost, money }) => ({
      ...{ season, stop: dated(stop), frost: frost === null ? null : dated(frost) },
      money: Math.round(100 * money) / 100,
    })),
  };
}
