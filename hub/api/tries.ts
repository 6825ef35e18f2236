/** Failures that cost nothing: fingers slip. Ours. */
const FREE = 5;
/** First wait, doubled with each further failure. ms, ours. */
const FIRST_WAIT = 1000;
/** A source forgets its failures this long after the last. ms, ours. */
const FORGOTTEN = 60 * 60_000;
/** Sources remembered; beyond it the one that failed longest ago is forgotten. Ours. */
const MOST_KEPT = 5000;

type Kept = { failures: number; until: number; at: number };

export type Tries = ReturnType<typeof makeTries>;

/**
 * Growing waits after failed tries, by source (an address, a name). A try during the wait is refused
 * and changes nothing, so that nobody is kept out for longer than the wait by somebody else's tries.
 *
 * @param longest the longest wait, ms.
 * @param clock ms that only ever grow, of whatever beginning.
 */
export function makeTries(longest: number, clock: () => number = () => performance.now()) {
  const kept = new Map<string, Kept>();
  return {
    /** Milliseconds this source still has to wait; 0 when it may try. */
    waits: (source: string): number => Math.max(0, (kept.get(source)?.until ?? 0) - clock()),
    failed(source: string): void {
      const now = clock();
      const before = kept.get(source);
      const failures = before && now - before.at < FORGOTTEN ? before.failures + 1 : 1;
      const wait =
        failures <= FREE ? 0 : Math.min(longest, FIRST_WAIT * 2 ** (failures - FREE - 1));
      kept.delete(source); // to the end of the order: forgotten last
      kept.set(source, { failures, until: now + wait, at: now });
      if (kept.size > MOST_KEPT) {
        const [oldest] = kept.keys();
        if (oldest !== undefined) kept.delete(oldest);
      }
    },
    /** The try counted last was none: it got in. */
    undo(source: string): void {
      const before = kept.get(source);
      if (before) kept.set(source, { ...before, failures: before.failures - 1, until: 0 });
    },
    forget: (source: string): void => void kept.delete(source),
    size: () => kept.size,
  };
}
