// Ten invented farms through a season each, twice: by the clock and feel, and by the same person
// with the hub besides. The whole hub runs under a stepped clock, fed with noisy probes; people
// answer late, sleep, and leave things undone. DEWPOST_SEEDS asks for fewer seasons,
// DEWPOST_FIRST_SEED for others, DEWPOST_DAYS for shorter ones, DEWPOST_BEGINS (a day) for another
// beginning, DEWPOST_LOOK for other minutes between looks (60: a twelfth of the looks a hub has, so
// what it asks comes later than it would), DEWPOST_HABIT=instead for somebody who leaves the vents
// to the hub alone, DEWPOST_UNDONE=cover,move-trays for kinds of tasks that nobody does; covers are left to it in any case. A whole season takes some minutes of one
// core. Figures are of invented farms: nothing follows from them for any other.

import { figure, remark } from './report.ts';
import { runSeasons } from './seasonCrew.ts';
import type { SeasonJob } from './seasonRun.ts';
import { overSeasons, pairsOf, tableOf, taskLines, type Worth } from './seasonTable.ts';

const SEEDS = Number(process.env.DEWPOST_SEEDS ?? 10);
const FIRST = Number(process.env.DEWPOST_FIRST_SEED ?? 1);
const DAYS = Number(process.env.DEWPOST_DAYS ?? 260);
const LOOK = Number(process.env.DEWPOST_LOOK ?? 60);
const BEGINS = Date.parse(process.env.DEWPOST_BEGINS ?? '2026-03-01');
const UNDONE = (process.env.DEWPOST_UNDONE ?? '').split(',');
const KEPT = process.env.DEWPOST_HABIT !== 'instead';

const jobs = Array.from({ length: SEEDS }, (_, i) => FIRST + i).flatMap((seed): SeasonJob[] => {
  const job = {
    seed,
    days: DAYS,
    begins: BEGINS,
    undone: UNDONE,
    look: LOOK,
    habits: { vents: KEPT, covers: false },
  };
  return [
    { ...job, way: 'clock', habits: { vents: true, covers: true } },
    { ...job, way: 'hub' },
  ];
});
const results = await runSeasons(jobs, ({ seed, way, seconds }) => {
  if (way === 'hub') remark(`season ${seed}: ${seconds.toFixed(0)} s`);
});
const pairs = pairsOf(results);
remark('Money is in the farm file’s currency; "asked" and "done" are minutes of tasks.');
for (const line of tableOf(pairs, DAYS)) remark(line);
for (const line of taskLines(pairs)) remark(line);
const units: Record<keyof Worth, string> = {
  ...{ more: 'money', lostLess: 'money', kgMore: 'kg', minutesMore: 'min', done: 'min' },
  ...{ asked: 'min', overDone: 'money', overAsked: 'money', over: 'money' },
};
for (const [what, unit] of Object.entries(units) as [keyof Worth, string][]) {
  const found = overSeasons(pairs, what);
  if (found === null) continue;
  const { mean, low, high } = found;
  figure(`season-${what}`, mean, unit);
  if (low !== null && high !== null)
    remark(`  95 % over the seasons: ${low.toFixed(0)} to ${high.toFixed(0)} ${unit}`);
}
