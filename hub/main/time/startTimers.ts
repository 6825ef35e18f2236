import cron from 'node-cron';
import type { Core } from '../core.ts';
import type { Keeping } from '../keeping/keeping.ts';
import { everySoOften } from './everySoOften.ts';
import { nightly } from './nightly.ts';
import { rescheduled } from './rescheduled.ts';

const MINUTE = 60_000;
/** How often the clock is held against the machine's steady count. Ours. */
const TICK = 1000; // ms

/** Everything that is done by the clock: looks, heartbeats, the work of the night. */
export async function startTimers(core: Core, keeping: Keeping, heartbeat: () => void) {
  const { speed } = core.clock;
  const timers = rescheduled(() => [
    cron.schedule(everySoOften(5 * MINUTE, speed), () => {
      core.look();
      setImmediate(core.snapshots.prepareDays);
    }),
    cron.schedule(everySoOften(MINUTE, speed), heartbeat),
    ...nightly(speed, core.calendar().zone, [
      ['0 10 3 * * *', keeping.backUp],
      ['0 40 3 * * *', keeping.trim],
    ]),
  ]);
  // A farm that was described only now has another midnight.
  let { zone } = core.calendar();
  core.feed.on('farm', (farm) => {
    if (farm.zone !== zone) timers.again();
    zone = farm.zone;
  });
  const ticks = setInterval(() => void core.tick(), TICK);
  await core.tick();
  return {
    /** The clock jumped: a timer that waits for a time of day has to think again. */
    again: timers.again,
    async stop() {
      clearInterval(ticks);
      await timers.stop();
    },
  };
}
