import { setTimeout as wait } from 'node:timers/promises';
import cron from 'node-cron';
import { onTestFinished, test, vi } from 'vitest';
import { everySoOften } from '../../../hub/main/time/everySoOften.ts';
import { rescheduled } from '../../../hub/main/time/rescheduled.ts';

const YEAR = 365 * 86_400_000;
const WITHIN = 20_000; // ms; machines that do other work too are slow

/** Only the clock is set about; time itself goes on. */
function settable() {
  vi.useFakeTimers({ toFake: ['Date'], now: Date.now(), shouldAdvanceTime: true });
  onTestFinished(() => {
    vi.useRealTimers();
  });
  return (by: number) => vi.setSystemTime(Date.now() + by);
}

test.for([-YEAR, -3_600_000, 3_600_000, YEAR])(
  'timers made anew after a jump of %i ms run on',
  { timeout: 60_000 },
  async (by) => {
    const jump = settable();
    let runs = 0;
    const timers = rescheduled(() => [cron.schedule(everySoOften(60_000, 60), () => void runs++)]);
    onTestFinished(() => timers.stop().then(() => {}));
    const more = async () => {
      const before = runs;
      for (const until = performance.now() + WITHIN; runs < before + 2; await wait(20))
        if (performance.now() > until)
          throw new Error(`Expected two runs in time, got ${runs - before}`);
    };
    await more();
    jump(by);
    timers.again();
    await more();
  },
);
