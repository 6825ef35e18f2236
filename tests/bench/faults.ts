// How soon the hub sees that something is wrong with a cool room, and how often it says so of one
// that is well: invented rooms (simulators/coolRoomTrial.ts), 30 seeds each, through intake, store,
// rules and patience, learned from the 15 days before. The rules were tried on seeds 1 to 15; told
// is what seeds 16 and on give. DEWPOST_SEEDS asks for fewer, DEWPOST_FIRST_SEED for others,
// DEWPOST_ROWS (a regular expression) for some rows. All of it depends on the invented rooms: it
// gives the order of size.

import { makeCrew } from './faultCrew.ts';
import { nameOf, type Row, rows } from './faultJobs.ts';
import { falseRow, faultRow, lineOf } from './faultTable.ts';
import { isHarmless, type TrialResult } from './faultTrial.ts';
import { figure, remark } from './report.ts';

const SEEDS = Number(process.env.DEWPOST_SEEDS ?? 30);
const FIRST = Number(process.env.DEWPOST_FIRST_SEED ?? 16);
const ROWS = new RegExp(process.env.DEWPOST_ROWS ?? '');
const TELL_ALL = process.env.DEWPOST_TRIALS_TOLD !== undefined;
const MONTH = 30; // days

export async function faultsFound() {
  const crew = makeCrew((job, why) => remark(`A trial was lost (${why}): ${JSON.stringify(job)}`));
  for (const row of rows.filter((each) => ROWS.test(nameOf(each)))) {
    const jobs = Array.from({ length: SEEDS }, (_, i) => ({ ...row, seed: FIRST + i }));
    const begin = performance.now();
    const results = (await crew.run(jobs)).filter((result) => result !== null);
    if (results.length === 0) continue;
    tell(row, results, (performance.now() - begin) / 1000);
    if (TELL_ALL) for (const result of results) remark(JSON.stringify(result));
  }
  crew.end();
}

function tell(row: Row, results: readonly TrialResult[], seconds: number) {
  const name = `faults-${nameOf(row)}`;
  const took = `${seconds.toFixed(0)} s`;
  if (isHarmless(row.fault)) {
    const { days, tasks, alarms, open } = falseRow(results);
    remark(
      `${nameOf(row).padEnd(24)} ${tasks} false tasks, ${alarms} of them alarms, in ${days.toFixed(0)} days; ${open} of a door that did stand open  ${took}`,
    );
    for (const { seed, falseTasks } of results) {
      for (const text of falseTasks) remark(`  ${seed} ${text}`);
    }
    if (row.fault !== 'none') figure(name, tasks, `false tasks in ${results.length}`);
    else {
      figure(`${name}-false-tasks`, (tasks * MONTH) / days, 'in 30 days');
      figure(`${name}-false-alarms`, (alarms * MONTH) / days, 'in 30 days');
    }
    return;
  }
  const told = faultRow(results);
  remark(`${lineOf(told)}  ${took}`);
  figure(`${name}-found`, (100 * told.found) / told.trials, '%');
  if (told.half !== null) figure(`${name}-half`, told.half, 'min');
  if (told.last !== null) figure(`${name}-last`, told.last, 'min');
  figure(`${name}-wrong-cause`, (100 * told.wrong) / Math.max(1, told.found), '%');
}
