import { Worker } from 'node:worker_threads';
import type { PlaceTrial, Progress, TrialJob } from './walkPast.ts';

/** How a trial ends: with what it found, or with what went wrong. A cancelled one tells nothing more. */
export type TrialTold = {
  readonly progress: (progress: Progress) => void;
  readonly done: (places: readonly PlaceTrial[]) => void;
  readonly failed: (why: string) => void;
};

/** Runs a job somewhere. @returns how to end it at once; settled when it is over */
export type RunTrial = (path: string, job: TrialJob, told: TrialTold) => () => Promise<unknown>;

/** MB for what is soon forgotten: each look leaves some, and a hub that runs on little would collect it all day. */
const YOUNG = 64; // ours

/** On a thread of its own, with its own connection to the store's file. */
export const runTrial =
  (worker: URL): RunTrial =>
  (path, job, told) => {
    const thread = new Worker(worker, {
      workerData: { path, job },
      resourceLimits: { maxYoungGenerationSizeMb: YOUNG },
    });
    let over = false;
    const once = (end: () => void) => {
      if (over) return;
      over = true;
      end();
    };
    thread.on(
      'message',
      (message: { readonly progress?: Progress; readonly places?: readonly PlaceTrial[] }) => {
        const { progress, places } = message;
        if (progress && !over) told.progress(progress);
        if (places) once(() => told.done(places));
      },
    );
    thread.on('error', (error) => once(() => told.failed(error.message)));
    thread.on('exit', (code) =>
      once(() => told.failed(`Expected a trial to end by itself, got exit code ${code}`)),
    );
    return () => {
      over = true;
      return thread.terminate();
    };
  };
