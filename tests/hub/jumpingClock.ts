import type { Clock } from '../../hub/clock.ts';
import { instant } from '../../rules/units.ts';

const SET_SINCE = Date.UTC(2024, 0, 1);

/** A clock that somebody sets: its steady count goes on, whatever time it is made to show. */
export function jumpingClock(start: number, running = false) {
  let now = start;
  let steady = 1_000_000;
  const begun = performance.now();
  const elapsed = () => (running ? performance.now() - begun : 0);
  return {
    now: () => instant(Math.round(now + elapsed())),
    steady: () => steady + elapsed(),
    speed: 1,
    isSet: () => now + elapsed() >= SET_SINCE,
    /** Time goes by, and the clock with it. */
    pass(ms: number) {
      now += ms;
      steady += ms;
    },
    /** The clock is put forward (back: negative). */
    jump(by: number) {
      now += by;
    },
  } satisfies Clock & Record<string, unknown>;
}
