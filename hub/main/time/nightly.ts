import cron, { type ScheduledTask } from 'node-cron';

/** Work for the small hours of the farm. A demonstration, whose nights pass in minutes, has none. */
export const nightly = (
  speed: number,
  timezone: string,
  work: readonly (readonly [pattern: string, run: () => Promise<void>])[],
): ScheduledTask[] =>
  speed === 1
    ? work.map(([pattern, run]) => cron.schedule(pattern, run, { timezone, noOverlap: true }))
    : [];
