import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { seasonPlan } from '../../simulators/seasonPlan.ts';
import { createSeasonWorld } from '../../simulators/seasonWorld.ts';
import { makeAnswers } from './seasonAnswers.ts';
import { type Books, countBed, emptyBooks } from './seasonBooks.ts';
import { type Habits, makeHabit } from './seasonHabit.ts';
import { makeHands, noDiary } from './seasonHands.ts';
import { makeSeasonHub } from './seasonHub.ts';

// One season of one farm, one way: by the clock and feel, or with the hub besides.

const MINUTE = 60_000;
const QUARTER = 15 * MINUTE;

export type SeasonWay = 'clock' | 'hub';
export type SeasonJob = {
  readonly seed: number;
  readonly way: SeasonWay;
  readonly days: number;
  /** Minutes between the hub's looks. */
  readonly look: number;
  /** What the clock and feel decide. */
  readonly habits: Habits;
  /** First day of work, ms since 1970; 1 March where left out. */
  readonly begins?: number;
  /** Kinds of tasks that nobody does, to see what the others bring. */
  readonly undone?: readonly string[];
};
export type SeasonResult = SeasonJob & { readonly books: Books; readonly seconds: number };

export function runSeason(job: SeasonJob): SeasonResult {
  const started = performance.now();
  const plan = seasonPlan(job.seed, job.days, job.begins);
  const { now, step } = createSeasonWorld(plan);
  const books = emptyBooks();
  const folder = mkdtempSync(
    join(existsSync('/dev/shm') ? '/dev/shm' : tmpdir(), 'dewpost-season-'),
  );
  const hub = job.way === 'hub' ? makeSeasonHub(plan, now, join(folder, 'season.db')) : null;
  try {
    const hands = makeHands(plan, now, books, hub?.diary ?? noDiary);
    const { habits } = job;
    const habit = makeHabit(plan, now, hands, habits);
    const answers = hub ? makeAnswers(plan, now, hands, hub, books, job.undone ?? []) : null;
    while (now.t < plan.ends) {
      step();
      hub?.hear();
      if (now.t < plan.begins || now.t % QUARTER !== 0) continue;
      habit();
      if (hub && now.t % (job.look * MINUTE) === 0) answers?.(hub.look());
    }
    for (const stand of [...now.stands.values()]) if (stand.plant.progress > 0.6) hands.cut(stand);
    for (const bed of Object.values(now.beds)) countBed(books, bed);
  } finally {
    hub?.close();
    rmSync(folder, { recursive: true, force: true });
  }
  return { ...job, books, seconds: (performance.now() - started) / 1000 };
}
