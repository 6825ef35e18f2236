import { meanInterval } from '../../rules/statistics/index.ts';
import {
  allKg,
  allLost,
  allMinutes,
  askedMinutes,
  type Books,
  doneMinutes,
  followed,
  lossMoney,
  takings,
  wageOf,
} from './seasonBooks.ts';
import type { SeasonResult } from './seasonRun.ts';

// The table of the seasons: each farm lived through twice, without the hub and with it.

export type SeasonPair = { readonly seed: number; readonly clock: Books; readonly hub: Books };

/** Seasons that were lived through both ways. */
export function pairsOf(results: readonly SeasonResult[]): SeasonPair[] {
  const of = (seed: number, way: string) =>
    results.find((one) => one.seed === seed && one.way === way)?.books;
  return [...new Set(results.map(({ seed }) => seed))]
    .sort((a, b) => a - b)
    .flatMap((seed) => {
      const [clock, hub] = [of(seed, 'clock'), of(seed, 'hub')];
      return clock && hub ? [{ seed, clock, hub }] : [];
    });
}

/** What the hub's way brings in besides, and what its work costs. */
export function worthOf({ clock, hub }: SeasonPair) {
  const more = takings(hub) - takings(clock);
  return {
    /** Money taken more, and lost less. */
    more,
    lostLess: allLost(clock) - allLost(hub),
    kgMore: allKg(hub) - allKg(clock),
    /** Minutes of all this work, the answers included, that the hub's way takes more. */
    minutesMore: allMinutes(hub) - allMinutes(clock),
    done: doneMinutes(hub),
    asked: askedMinutes(hub),
    /** Money left when every minute that was asked for and done, and each answer, is paid. */
    overDone: more - wageOf(doneMinutes(hub) + hub.minutes.answers),
    overAsked: more - wageOf(askedMinutes(hub) + hub.minutes.answers),
    /** Money left when the minutes more are paid: what the grower ends up with. */
    over: more - wageOf(allMinutes(hub) - allMinutes(clock)),
  };
}
export type Worth = ReturnType<typeof worthOf>;

const round = (value: number) => String(Math.round(value)).replace(/^-0$/, '0');
const columns = [
  ...['season', 'way', 'kg', 'taken', 'lost', 'mould', 'heat', 'chill', 'frost', 'bees'],
  ...['minutes', 'vents', 'covers', 'carry', 'asked', 'done', 'tasks/day', 'alarms'],
] as const;

function cells(seed: number, way: string, books: Books, days: number): string[] {
  const { mould, heat, chill, frost, unvisited } = lossMoney(books);
  const { minutes } = books;
  const tasks = Object.values(books.tasks).reduce((sum, { asked }) => sum + asked, 0);
  const figures = [
    ...[allKg(books), takings(books), allLost(books), mould, heat, chill, frost, unvisited],
    ...[allMinutes(books), minutes.vents, minutes.covers, minutes.carrying],
    ...[askedMinutes(books), doneMinutes(books)],
  ];
  return [String(seed), way, ...figures.map(round), (tasks / days).toFixed(1), round(books.alarms)];
}

export function tableOf(pairs: readonly SeasonPair[], days: number): string[] {
  const rows = pairs.flatMap(({ seed, clock, hub }) => [
    cells(seed, 'clock', clock, days),
    cells(seed, 'hub', hub, days),
  ]);
  const all = [[...columns], ...rows];
  const widths = columns.map((_, i) => Math.max(...all.map((row) => row[i]?.length ?? 0)));
  return all.map((row) => row.map((cell, i) => cell.padStart(widths[i] ?? 0)).join('  '));
}

/** Mean over the seasons of a paired difference, with its 95 % interval. */
export function overSeasons(pairs: readonly SeasonPair[], what: keyof Worth) {
  return meanInterval(
    pairs.map((pair) => worthOf(pair)[what]),
    0.95,
  );
}

/** What became of each kind of task, all seasons together. */
export function taskLines(pairs: readonly SeasonPair[]): string[] {
  return followed.map((kind) => {
    const sum = { asked: 0, done: 0, already: 0, minutesAsked: 0, minutesDone: 0 };
    for (const { hub } of pairs)
      for (const key of Object.keys(sum) as (keyof typeof sum)[])
        sum[key] += hub.tasks[kind]?.[key] ?? 0;
    const each = (value: number) => (value / Math.max(1, pairs.length)).toFixed(0);
    return `${kind.padEnd(10)} a season: asked ${each(sum.asked)}, answered done ${each(sum.done)} (${each(sum.already)} stood so already), ${each(sum.minutesAsked)} min asked, ${each(sum.minutesDone)} min worked`;
  });
}
