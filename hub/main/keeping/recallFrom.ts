import type { Clock } from '../../clock.ts';
import type { IntakeParts } from '../../intake/index.ts';
import type { Store } from '../../store/index.ts';

/** How far back a stuck value may have begun before this process did. */
const RECALL = 8 * 3_600_000; // ms
/** A reading this far ahead of the clock may still be of now. */
const AHEAD = 600_000; // ms

/** What the intake has to know of a series it has not seen since the hub started. */
export const recallFrom =
  (store: Store, clock: Clock): IntakeParts['recall'] =>
  (probe, quantity) => {
    const newest = store.readings.newest(probe, quantity);
    if (!newest) return [];
    // What lies further ahead was stored under a clock that ran ahead.
    const last = Math.min(newest.t, clock.now() + AHEAD);
    return store.readings.allBetween(probe, quantity, last - RECALL, last + 1);
  };
