import type { Backtest } from '../contract/index.ts';
import type { tryOut } from './tryOut.ts';

const NOTHING: Backtest = {
  ...{ state: 'none', done: 0, of: 0, startedAt: null, why: null, result: null },
};

/** One trial of the planner a patch, worked off in slices between requests; it can be called off. */
export function makeJobs(now: () => number) {
  const jobs = new Map<string, { state: Backtest; canceled: boolean }>();

  return {
    of: (place: string): Backtest => jobs.get(place)?.state ?? NOTHING,
    /** Begins anew; one that runs goes on. */
    start(place: string, prepare: () => ReturnType<typeof tryOut>): Backtest {
      const running = jobs.get(place);
      if (running?.state.state === 'running') return running.state;
      const startedAt = new Date(now()).toISOString();
      const job = {
        state: { ...NOTHING, state: 'running', startedAt } as Backtest,
        canceled: false,
      };
      jobs.set(place, job);
      const fail = (why: string) => {
        job.state = { ...job.state, state: 'failed', why };
      };
      let made: ReturnType<typeof tryOut>;
      try {
        made = prepare();
      } catch (error) {
        fail(error instanceof Error ? error.message : String(error));
        return job.state;
      }
      if ('why' in made) {
        fail(made.why);
        return job.state;
      }
      const { of, slices, result } = made;
      job.state = { ...job.state, of };
      const step = () => {
        if (job.canceled) {
          job.state = { ...job.state, state: 'canceled' };
          return;
        }
        try {
          if (slices.next().done === true) {
            job.state = { ...job.state, state: 'done', result: result() };
            return;
          }
          job.state = { ...job.state, done: job.state.done + 1 };
          setImmediate(step);
        } catch (error) {
          fail(error instanceof Error ? error.message : String(error));
        }
      };
      setImmediate(step);
      return job.state;
    },
    cancel(place: string): Backtest {
      const job = jobs.get(place);
      if (job?.state.state === 'running') {
        job.canceled = true;
        job.state = { ...job.state, state: 'canceled' };
      }
      return this.of(place);
    },
    cancelAll() {
      for (const job of jobs.values()) job.canceled = true;
    },
  };
}
