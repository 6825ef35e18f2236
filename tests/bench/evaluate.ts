// One look of the hub: roll-ups brought up to date, snapshot, rules, tasks. Its time is what stands
// between a reading and its task, and must not grow as the store grows old. Both stores take turns,
// so that a slow moment of the machine falls on both; only look() is timed, and before each look
// every series gets one fresh reading five minutes on.

import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  type Age,
  END,
  feed,
  folder,
  historyFile,
  openCore,
  readingsOf,
  SERIES_PROBES,
} from './history.ts';
import { figure, middle, quantile, timed } from './report.ts';

const STEP = 300_000; // ms
const ROUNDS = 40;
const WARM = 5;

export async function evaluate() {
  const ages: readonly Age[] = ['month', '5-years'];
  const hubs = ages.map((age) => {
    const file = join(folder, `evaluate-${age}.db`);
    copyFileSync(historyFile(age), file);
    const hub = openCore(file, END);
    hub.core.look(); // fills the window of the newest days
    return { age, hub, times: [] as number[], afterMove: [] as number[] };
  });
  for (let round = 0; round < ROUNDS + WARM; round++) {
    const t = END + round * STEP;
    for (const { hub, times } of round % 2 === 0 ? hubs : hubs.toReversed()) {
      hub.clock.set(t);
      feed(hub, [...readingsOf(SERIES_PROBES, t, t + 1, STEP)], t);
      const took = timed(() => hub.core.look());
      if (hub.core.lastLook()?.at !== t || hub.core.lastLook()?.failure)
        throw new Error(`Expected a look at ${t}, got ${hub.core.lastLook()?.failure}`);
      if (round >= WARM) times.push(took);
    }
  }
  // A probe was moved: what was made from the readings is made again, in the next look.
  for (let round = 0; round < 3; round++)
    for (const { hub, afterMove } of hubs) {
      hub.core.refarmed();
      afterMove.push(timed(() => hub.core.look()));
    }
  for (const { age, times, afterMove } of hubs) {
    figure(`evaluate-${age}-p50`, middle(times), 'ms');
    figure(`evaluate-${age}-p95`, quantile(times, 0.95), 'ms');
    figure(`evaluate-${age}-after-a-move`, middle(afterMove), 'ms');
  }
  const [month, years] = hubs.map(({ times }) => middle(times));
  figure('evaluate-5-years-to-month', (years ?? 0) / (month ?? 1), 'x');
  for (const { hub } of hubs) hub.core.close();
}
