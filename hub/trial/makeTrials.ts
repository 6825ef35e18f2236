import { randomUUID } from 'node:crypto';
import type { TrialChange } from '../contract/index.ts';
import type { RunTrial } from './runTrial.ts';
import type { PlaceTrial, TrialJob } from './walkPast.ts';

export type TrialState = {
  readonly id: string;
  readonly who: string;
  readonly changes: readonly TrialChange[];
  readonly job: TrialJob;
  readonly startedAt: number;
  readonly state: 'running' | 'done' | 'canceled' | 'failed';
  /** 0..1 */
  readonly progress: number;
  readonly place: string | null;
  readonly why: string | null;
  readonly places: readonly PlaceTrial[] | null;
};

/** Trials kept for each person, the newest. Ours: to look at one again beside the next. */
const KEPT = 5;

/** Trials that run and that are over; one at a time for each person. Nothing of them is kept on disk. */
export function makeTrials(run: RunTrial, path: string, now: () => number) {
  const trials = new Map<string, TrialState>();
  const ends = new Map<string, () => Promise<unknown>>();
  const change = (id: string, more: Partial<TrialState>) => {
    const trial = trials.get(id);
    if (trial) trials.set(id, { ...trial, ...more });
  };
  const cancel = (id: string): TrialState | undefined => {
    if (trials.get(id)?.state === 'running') {
      void ends.get(id)?.();
      ends.delete(id);
      change(id, { state: 'canceled' });
    }
    return trials.get(id);
  };

  return {
    get: (id: string) => trials.get(id),
    runningOf: (who: string) =>
      [...trials.values()].find((one) => one.who === who && one.state === 'running'),
    /** The newest of somebody, over or not. */
    newestOf: (who: string) => [...trials.values()].filter((one) => one.who === who).at(-1),
    start(who: string, changes: readonly TrialChange[], job: TrialJob): TrialState {
      const own = [...trials.values()].filter((one) => one.who === who && one.state !== 'running');
      for (const { id } of own.slice(0, Math.max(0, own.length - KEPT + 1))) trials.delete(id);
      const id = randomUUID();
      const trial: TrialState = {
        ...{ id, who, changes, job, startedAt: now(), state: 'running' },
        ...{ progress: 0, place: null, why: null, places: null },
      };
      trials.set(id, trial);
      ends.set(
        id,
        run(path, job, {
          progress: ({ done, of, place }) => change(id, { progress: done / of, place }),
          done(places) {
            ends.delete(id);
            change(id, { state: 'done', progress: 1, places });
          },
          failed(why) {
            ends.delete(id);
            change(id, { state: 'failed', why });
          },
        }),
      );
      return trial;
    },
    cancel,
    close() {
      for (const id of [...ends.keys()]) cancel(id);
    },
  };
}
export type Trials = ReturnType<typeof makeTrials>;
