import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pino } from 'pino';
import { steppedClock } from '../../hub/clock.ts';
import type { RawReading } from '../../hub/intake/index.ts';
import { joinCore } from '../../hub/main/core.ts';
import { importFarm } from '../../hub/main/farm/farmKept.ts';
import { openStore } from '../../hub/store/index.ts';
import { benchFarm, probeId, QUANTITIES, valueAt } from './benchFarm.ts';
import { remark } from './report.ts';

// Stores with history in them, for the benchmarks that ask whether age makes the hub slow. Readings
// go through the real intake in big batches. Both stores are the same over their last 31 days: 60
// series, a reading every 5 minutes. The long one has a reading every 30 minutes in the years
// before: a coarser step keeps the building under a minute, and roll-ups, days and nights are as
// many as with any step.

const MINUTE = 60_000;
const DAY = 86_400_000;
/** Every history ends here: a summer afternoon, so that days, nights and vents all have work. */
export const END = Date.parse('2026-06-30T15:00:00Z');
export const SERIES_PROBES = 30; // times two quantities: 60 series
const FINE_DAYS = 31;
export type Age = 'month' | '5-years';
const DAYS: Readonly<Record<Age, number>> = { month: FINE_DAYS, '5-years': 5 * 365 + 1 };

/** One folder for everything a run writes; taken away at the end. */
export const folder = mkdtempSync(join(tmpdir(), 'dewpost-bench-'));
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));

export const quiet = pino({ level: 'error' }, pino.destination(2));

/** All readings of `probes` from `from` (included) to `to`, in order of time. */
export function* readingsOf(probes: number, from: number, to: number, step: number) {
  for (let t = from; t < to; t += step)
    for (let probe = 0; probe < probes; probe++)
      for (const quantity of QUANTITIES)
        yield { probe: probeId(probe), quantity, t, value: valueAt(probe, quantity, t) };
}

export type BenchCore = ReturnType<typeof openCore>;
/** The hub without wires on a store's file, under a clock the benchmark sets. */
export function openCore(file: string, now: number) {
  const store = openStore(file);
  const clock = steppedClock(now);
  if (store.farm() === undefined) importFarm(store, benchFarm(SERIES_PROBES), 0);
  return { core: joinCore({ store, clock, log: quiet }), clock };
}

/** In one commit. @throws Error when it could not be kept. */
export function feed({ core }: BenchCore, readings: readonly RawReading[], receivedAt: number) {
  let failure: Error | null | undefined;
  core.intake.receiveReadings(readings, receivedAt, (error) => {
    failure = error;
  });
  core.intake.flush();
  if (failure) throw failure;
}

const built = new Map<Age, string>();
/** The file of a store with this much history; built at the first call. */
export function historyFile(age: Age): string {
  const known = built.get(age);
  if (known !== undefined) return known;
  const file = join(folder, age, 'dewpost.db');
  const begin = performance.now();
  const hub = openCore(file, END);
  const fine = END - FINE_DAYS * DAY;
  let count = 0;
  const write = (from: number, to: number, step: number, stride: number) => {
    for (let t = from; t < to; t += stride) {
      const readings = [...readingsOf(SERIES_PROBES, t, Math.min(t + stride, to), step)];
      feed(hub, readings, END);
      count += readings.length;
    }
  };
  write(END - DAYS[age] * DAY, fine, 30 * MINUTE, 14 * DAY);
  write(fine, END, 5 * MINUTE, 2 * DAY);
  hub.core.look();
  const doubted = hub.core.store.refusals.since(0);
  if (doubted.length > 0)
    throw new Error(`Expected a history without doubtful readings, got ${doubted[0]?.last}`);
  hub.core.close();
  built.set(age, file);
  const seconds = (performance.now() - begin) / 1000;
  remark(`${age}: ${count} readings written in ${seconds.toFixed(1)} s`);
  return file;
}
