// How soon the hub sees that something is wrong with a cool room, and how often it says so of one
// that is well: invented rooms (simulators/coolRoomTrial.ts), 30 seeds each, through intake, store,
// rules and patience, learned from the 15 days before. DEWPOST_SEEDS asks for fewer.
// All of it depends on the invented rooms: it gives the order of size.

import type { TrialFault } from '../../simulators/coolRoomTrial.ts';
import { asked, jobsOf, runJob } from './faultJobs.ts';
import { falseRow, faultRow, lineOf } from './faultTable.ts';
import type { Fitted } from './faultTrial.ts';
import { figure, remark } from './report.ts';

const SEEDS = Number(process.env.DEWPOST_SEEDS ?? 30);
const MONTH = 30; // days

export async function faultsFound() {
  const seeds = Array.from({ length: SEEDS }, (_, i) => i + 1);
  const results = jobsOf(seeds).map(runJob);
  const of = (fitted: Fitted, fault: TrialFault) =>
    results.filter((one) => one.fitted === fitted && one.fault === fault);
  for (const fitted of Object.keys(asked) as Fitted[]) {
    for (const fault of asked[fitted]) {
      const here = of(fitted, fault);
      const name = `faults-${fitted}-${fault}`;
      if (fault === 'none' || fault === 'warm-load' || fault === 'hot-day') {
        const { days, tasks, alarms, open } = falseRow(here);
        remark(
          `${fault} ${fitted}: ${tasks} false tasks, ${alarms} of them alarms, in ${days.toFixed(0)} days; ${open} of a door that did stand open`,
        );
        if (fault === 'none') {
          figure('faults-false-tasks', (tasks * MONTH) / days, 'in 30 days');
          figure('faults-false-alarms', (alarms * MONTH) / days, 'in 30 days');
          for (const text of here.flatMap(({ falseTasks }) => falseTasks)) remark(`  ${text}`);
        } else figure(name, tasks, `false tasks in ${here.length}`);
        continue;
      }
      const row = faultRow(here);
      remark(lineOf(row));
      figure(`${name}-found`, (100 * row.found) / row.trials, '%');
      if (row.half !== null) figure(`${name}-half`, row.half, 'min');
      if (row.last !== null) figure(`${name}-last`, row.last, 'min');
      figure(`${name}-wrong-cause`, (100 * row.wrong) / Math.max(1, row.found), '%');
    }
  }
}
