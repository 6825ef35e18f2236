import { expectRange } from '../expectRange.ts';
import { blockPermutation, holm, wilson } from '../statistics/index.ts';
import type { Bounds } from '../wetness/index.ts';
import { type Exposure, exposureLimits, LOSS_LIMIT } from './exposureLimits.ts';
import { exposureSplit, isExposed } from './exposureSplit.ts';
import { lossAssociation, type SplitTest } from './lossAssociation.ts';
import { type AssociationWords, associationWords, rivalOf } from './lossAssociations.ts';
import { type WeeksNeeded, weeksNeeded } from './weeksNeeded.ts';

/** A place in a week, a batch or a lot: what it went through, and what was lost of it. */
export type LossCase = {
  /** Cases under the same weather, such as places in one week, share it. */
  readonly block: string;
  readonly slot: string;
  readonly exposure: Readonly<Partial<Record<Exposure, Bounds>>>;
  /** Least and most share lost, 0..1; null where nobody kept the log. */
  readonly lost: Bounds | null;
};

export type WeekComparison = SplitTest & {
  readonly what: Exposure;
  /** For each case, in order: exposed, lost; null for not known. */
  readonly cases: readonly { readonly exposed: boolean | null; readonly lost: boolean | null }[];
  /** The larger of Fisher's chance and that of whole weeks in any order; null for counts only. */
  readonly chance: number | null;
  /** The same, with all comparisons looked at taken into account (Holm 1979). */
  readonly adjusted: number | null;
  /** 95 % intervals of the shares lost; null for an empty group. */
  readonly exposedShare: Bounds | null;
  readonly otherShare: Bounds | null;
  readonly words: AssociationWords;
  readonly rival: Exposure | null;
  readonly needed: WeeksNeeded | null;
};

/** Whether more than a tenth was lost; null where that is not sure. */
export function isLost(lost: Bounds | null): boolean | null {
  if (lost === null) return null;
  const [least, most] = lost;
  return isExposed({ known: least, unknown: Math.max(0, most - least) }, LOSS_LIMIT);
}

/**
 * Holds losses against what went before them, in one or more families of cases (places in weeks,
 * batches, lots), each exposure of each family being one comparison. All of them count when the
 * chances are adjusted. A case whose exposure or loss lies on both sides of a limit, given what is
 * not known, is left out and counted. No cause is named.
 * @throws RangeError for a share outside 0..1
 */
export function weekComparisons(
  families: readonly {
    readonly cases: readonly LossCase[];
    readonly exposures: readonly Exposure[];
  }[],
): { readonly families: readonly (readonly WeekComparison[])[]; readonly tried: number } {
  const offered = families.map(({ cases, exposures }) =>
    exposures.map((what) => ({ what, ...compared(cases, what, exposures) })),
  );
  const chances = offered.flat().map(({ chance }) => chance ?? 1);
  const adjusted = holm(chances);
  const tried = chances.length;
  let at = 0;
  return {
    tried,
    families: offered.map((family) =>
      family.map((one): WeekComparison => {
        const after = one.chance === null ? null : (adjusted[at] ?? 1);
        at += 1;
        const { exposedLost, exposedKept, otherLost, otherKept, lots } = one.facts;
        return {
          ...one,
          adjusted: after,
          words: associationWords(after, lots),
          needed: weeksNeeded(exposedLost + exposedKept, otherLost + otherKept, tried),
        };
      }),
    ),
  };
}

function compared(family: readonly LossCase[], what: Exposure, offered: readonly Exposure[]) {
  const { limit } = exposureLimits[what];
  const exposedTo = (one: LossCase, to: Exposure): boolean | null => {
    const bounds = one.exposure[to];
    if (!bounds) return null;
    return isExposed(
      { known: bounds[0], unknown: Math.max(0, bounds[1] - bounds[0]) },
      exposureLimits[to].limit,
    );
  };
  const cases = family.map((one) => {
    if (one.lost) for (const share of one.lost) expectRange('share lost', share, 0, 1, '');
    return { exposed: exposedTo(one, what), lost: isLost(one.lost) };
  });
  const test = lossAssociation(exposureSplit(cases));
  const { exposedLost, exposedKept, otherLost, otherKept } = test.facts;
  const known = family.flatMap(({ block, slot }, i) => {
    const { exposed = null, lost = null } = cases[i] ?? {};
    return exposed === null || lost === null ? [] : [{ block, slot, exposed, lost }];
  });
  // One case in each block is what Fisher's test counts on; more of them are not as many witnesses.
  const together = new Set(known.map(({ block }) => block)).size < known.length;
  const byBlocks = test.p !== null && together ? blockPermutation(known) : null;
  const rival = rivalOf(
    what,
    cases.map(({ exposed }) => exposed),
    offered.map((other) => ({ what: other, exposed: family.map((one) => exposedTo(one, other)) })),
  );
  const share = (lost: number, kept: number): Bounds | null =>
    lost + kept === 0 ? null : wilson(lost, lost + kept);
  return {
    ...test,
    limit,
    cases,
    chance: test.p === null ? null : Math.max(test.p, byBlocks ?? 0),
    exposedShare: share(exposedLost, exposedKept),
    otherShare: share(otherLost, otherKept),
    rival: rival as Exposure | null,
  };
}
