import { fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import type { SeasonJob, SeasonResult } from './seasonRun.ts';

// Seasons are shared out among processes of their own, two at most.

const MOST = 2;

/** Runs every season; each is told as it ends. @throws Error when one of the processes dies */
export async function runSeasons(
  jobs: readonly SeasonJob[],
  told: (result: SeasonResult) => void,
): Promise<SeasonResult[]> {
  const entry = new URL(import.meta.url.replace(/seasonCrew(\.\w+)$/, 'seasonChild$1'));
  const results: SeasonResult[] = [];
  let next = 0;
  const work = async () => {
    const child = fork(entry, { stdio: ['ignore', 'inherit', 'inherit', 'ipc'] });
    try {
      for (let job = jobs[next++]; job !== undefined; job = jobs[next++]) {
        const result = await new Promise<SeasonResult>((done, failed) => {
          const gone = (code: number | null) =>
            failed(new Error(`Expected a season to end, got exit ${code}`));
          child.once('exit', gone);
          child.once('message', (message) => {
            child.off('exit', gone);
            done(message as SeasonResult);
          });
          child.send(job as SeasonJob);
        });
        results.push(result);
        told(result);
      }
    } finally {
      child.disconnect();
    }
  };
  await Promise.all(Array.from({ length: Math.min(MOST, availableParallelism()) }, work));
  return results;
}
