// A limit tried on the past: a year of the twenty places, under the limits as they are and under
// others, on a thread of its own; and how soon a trial that is called off is over.

import { join } from 'node:path';
import { readFarmFile } from '../../hub/farm/index.ts';
import { changedFarm, type PlaceTrial, runTrial, type TrialJob } from '../../hub/trial/index.ts';
import { benchFarm, PLACES, placeName, valueAt } from './benchFarm.ts';
import {
  type BenchCore,
  END,
  feed,
  folder,
  openCore,
  readingsOf,
  SERIES_PROBES,
} from './history.ts';
import { figure } from './report.ts';

const HOUR = 3_600_000; // ms
const DAY = 24 * HOUR;
const YEAR = 365 * DAY;
const WORKER = new URL('../../hub/trial/trialWorker.js', import.meta.url);

const HOURS_TOLD = 16; // of an evening and its night: what the hub keeps of one

/** What a hub would have issued of each night in the open, an hour apart. */
function keepForecasts(store: BenchCore['core']['store']) {
  const open = Array.from({ length: PLACES }, (_, i) => i).filter((i) => i % 4 === 0);
  store.transaction(() => {
    for (let t = END - YEAR; t < END; t += DAY)
      for (const i of open)
        for (let h = 0; h < HOURS_TOLD; h++) {
          const noon = Math.floor(t / DAY) * DAY + DAY / 2;
          const issuedAt = noon + h * HOUR;
          const mean = valueAt(i, 'temperature', noon + 15 * HOUR) + 0.1 * (HOURS_TOLD - h);
          const night = new Date(noon + DAY).toISOString().slice(0, 10);
          const about = { place: placeName(i), spot: i === 0 ? 'air' : 'canopy', night };
          const body = JSON.stringify({
            ...{ ...about, issuedAt, low: { mean, sd: 1.5, df: 20 }, pBelow: { at: -1, p: 0.2 } },
            ...{ crossesAt: null, nightsLearned: 30, method: 'evening', limits: [], sources: [] },
          });
          store.forecasts.put({ ...about, issuedAt, method: 'evening' }, body);
        }
  });
}

export async function trialYear() {
  const file = join(folder, 'trial.db');
  const hub = openCore(file, END);
  // A reading an hour: a trial reads the hours, which are as many with any step.
  for (let t = END - YEAR - 3 * DAY; t < END; t += 14 * DAY)
    feed(hub, [...readingsOf(SERIES_PROBES, t, Math.min(t + 14 * DAY, END), HOUR)], END);
  const { core } = hub;
  core.snapshots.fold(true);
  keepForecasts(core.store);
  const before = readFarmFile(benchFarm(SERIES_PROBES)).farm;
  if (!before) throw new Error('Expected the farm of the benchmarks, got faults');
  const after = changedFarm(before, [
    ...before.places.map(({ id }) => ({ what: 'wet-at' as const, of: id, to: 95 })),
    { what: 'heat-limit', of: 'leaves', to: 28 },
    { what: 'wage', of: null, to: 20 },
    { what: 'room-limit', of: 'cool-room', to: 5 },
  ]);
  const job: TrialJob = { before, after, from: END - YEAR, to: END };
  const run = runTrial(WORKER);
  const cpu = process.cpuUsage();
  const begin = performance.now();
  const places = await new Promise<readonly PlaceTrial[]>((done, failed) =>
    run(file, job, { progress: () => {}, done, failed: (why) => failed(new Error(why)) }),
  );
  figure('trial-year-20-places', (performance.now() - begin) / 1000, 's');
  const { user, system } = process.cpuUsage(cpu);
  figure('trial-year-20-places-processor', (user + system) / 1e6, 's');
  const again = await new Promise<number>((over) => {
    let called = 0;
    const end = run(file, job, {
      progress() {
        if (called > 0) return;
        called = performance.now();
        void Promise.resolve(end()).then(() => over(performance.now() - called));
      },
      done: () => over(Number.NaN),
      failed: () => over(Number.NaN),
    });
  });
  figure('trial-called-off', again, 'ms');
  const asked = places.reduce((sum, { before, after }) => sum + before.length + after.length, 0);
  if (places.length < 19 || asked === 0)
    throw new Error(`Expected 19 places with tasks, got ${places.length} with ${asked}`);
  core.close();
}
