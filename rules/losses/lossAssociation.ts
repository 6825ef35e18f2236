import {
  enoughToCompare,
  fisherExact,
  leastFisherP,
  newcombeDifference,
} from '../statistics/index.ts';
import type { Probability } from '../units.ts';
import type { SplitFacts } from './exposureSplit.ts';

export type SplitTest = {
  readonly facts: SplitFacts;
  /** Chance of a split this uneven, Fisher's exact test; null where only counts may be shown. */
  readonly p: Probability | null;
  /** Share lost of the exposed less that of the others, 95 %; null where only counts may be shown. */
  readonly difference: {
    readonly difference: number;
    readonly low: number;
    readonly high: number;
  } | null;
  /** The least chance groups of this size could have given; null for an empty group. */
  readonly leastP: Probability | null;
};

/**
 * What one split of lots can bear. Under six lots, or three in a group, counts and nothing else.
 *
 * Source: Fisher 1935; Newcombe 1998. The least numbers are common practice, no source.
 */
export function lossAssociation(facts: SplitFacts): SplitTest {
  const { exposedLost, exposedKept, otherLost, otherKept } = facts;
  const exposed = exposedLost + exposedKept;
  const others = otherLost + otherKept;
  const leastP =
    exposed === 0 || others === 0 || exposed > 500 || others > 500
      ? null
      : leastFisherP(exposed, others);
  if (!enoughToCompare(exposed, others)) return { facts, p: null, difference: null, leastP };
  return {
    facts,
    p: fisherExact(exposedLost, exposedKept, otherLost, otherKept).p,
    difference: newcombeDifference(exposedLost, exposed, otherLost, others),
    leastP,
  };
}
