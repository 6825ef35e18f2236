import { type ChildProcess, fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { folder } from './faultBase.ts';
import type { TrialJob, TrialResult } from './faultTrial.ts';

// Trials are shared out among processes of their own, two at most: one that dies takes its trial
// with it, which is told, and not the rest.

const MOST = 2;

export type Crew = {
  /** What the trials gave, in their order; null for one whose process died. */
  readonly run: (jobs: readonly TrialJob[]) => Promise<(TrialResult | null)[]>;
  readonly end: () => void;
};

export function makeCrew(died: (job: TrialJob, why: string) => void): Crew {
  const entry = import.meta.url.replace(/faultCrew(\.\w+)$/, 'faultChild$1');
  const hands: (ChildProcess | null)[] = Array.from(
    { length: Math.min(MOST, availableParallelism()) },
    () => null,
  );
  const begin = () =>
    fork(new URL(entry), {
      env: { ...process.env, DEWPOST_TRIALS: folder },
      stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
    });

  const give = (hand: number, job: TrialJob) =>
    new Promise<TrialResult | null>((done) => {
      const child = hands[hand] ?? begin();
      hands[hand] = child;
      const answered = (result: TrialResult) => {
        child.off('exit', gone);
        done(result);
      };
      const gone = (code: number | null, signal: string | null) => {
        child.off('message', answered);
        hands[hand] = null;
        died(job, `exit ${code ?? signal}`);
        done(null);
      };
      child.once('message', answered);
      child.once('exit', gone);
      child.send(job);
    });

  return {
    async run(jobs) {
      const results: (TrialResult | null)[] = jobs.map(() => null);
      let next = 0;
      const work = async (hand: number) => {
        for (let i = next++; i < jobs.length; i = next++) {
          results[i] = await give(hand, jobs[i] as TrialJob);
        }
      };
      await Promise.all(hands.map((_, hand) => work(hand)));
      return results;
    },
    end() {
      for (const child of hands) child?.disconnect();
    },
  };
}
