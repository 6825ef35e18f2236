import { expectRange } from '../expectRange.ts';
import type { Instant } from '../units.ts';
import type { Verdict } from './judgement.ts';

const DAY = 86_400_000; // ms
const LONGEST = 365; // days; ours

/** What the grower recorded of a treatment. Never what it was to be: the label is the law. */
export type Treatment = {
  readonly at: Instant;
  /** Harvest interval off the label, days, as the grower entered it; null when it was not entered. */
  readonly harvestInterval: number | null;
};

/**
 * Whether picking has to wait for a treatment's harvest interval. Unknown, and so blocked until
 * somebody reads the label, when no interval was entered.
 * @throws RangeError for an interval outside 0..365 days
 */
export function pickingBlocked(treatments: readonly Treatment[], now: Instant): Verdict {
  const each = treatments.map(({ at, harvestInterval }): Verdict => {
    if (harvestInterval === null) return 'unknown';
    expectRange('harvest interval', harvestInterval, 0, LONGEST, 'days');
    return now < at + harvestInterval * DAY ? 'yes' : 'no';
  });
  if (each.includes('yes')) return 'yes';
  return each.includes('unknown') ? 'unknown' : 'no';
}
