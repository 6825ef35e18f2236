import { type Instant, MINUTE } from '../units.ts';

// A unit at work lowers the air minute by minute, so that a rest on the way down is soon seen.

const STEP_UP = 0.5; // K: a door or a defrost came between. Ours

/** The clock of a rest: how long the air has made no way down since the clock was begun. */
export type WayDown = {
  readonly begin: (at: Instant, now: number) => void;
  /** Takes the next reading. @returns minutes without way down */
  readonly next: (at: Instant, now: number) => number;
};

/**
 * Ours, from no source.
 * @param step K that are a way down: more than a probe's noise, less than a working unit soon makes
 */
export function wayDown(step: number): WayDown {
  let from = 0;
  let mark = 0;
  let rises = false;
  const begin = (at: Instant, now: number) => {
    from = at;
    mark = now;
    rises = false;
  };
  return {
    begin,
    next(at, now) {
      if (rises) mark = Math.max(mark, now);
      if (now <= mark - step) begin(at, now);
      else if (!rises && now >= mark + STEP_UP) {
        rises = true;
        mark = now;
      }
      return (at - from) / MINUTE;
    },
  };
}
