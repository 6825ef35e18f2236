import type { ScheduledTask } from 'node-cron';

/**
 * Timers that follow the calendar, made anew when the clock jumps: a timer that waits for the time of
 * the next run would, after a step back of a year, wait for a year.
 */
export function rescheduled(make: () => readonly ScheduledTask[]) {
  let tasks = make();
  const stop = () => Promise.all(tasks.map((task) => task.destroy()));
  return {
    again() {
      void stop();
      tasks = make();
    },
    stop,
  };
}
