/** How often something that wears the card may be done. */
export type Pace = {
  /** How long to wait with the next one, ms; 0: now. */
  readonly wait: () => number;
  readonly spend: () => void;
};

/**
 * One in `everyMs` in the long run; up to `ahead` of them at once after a quiet time. So a lone
 * probe is answered at once, and many that send all the time share what is written.
 *
 * @param now a clock that only moves on, ms.
 */
export function steadyPace(
  everyMs: number,
  ahead: number,
  now: () => number = () => performance.now(),
): Pace {
  let left = ahead;
  let at = now();
  const catchUp = () => {
    const t = now();
    left = everyMs > 0 ? Math.min(ahead, left + (t - at) / everyMs) : ahead;
    at = t;
  };
  return {
    wait() {
      catchUp();
      return left >= 1 ? 0 : Math.ceil((1 - left) * everyMs);
    },
    spend() {
      catchUp();
      left = Math.max(0, left - 1); // a full batch never waits, and the next one no longer for it
    },
  };
}
