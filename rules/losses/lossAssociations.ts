import { expectRange } from '../expectRange.ts';
import { benjaminiHochberg } from '../statistics/index.ts';
import { exposureSplit, type LotExposure, type SplitFacts } from './exposureSplit.ts';
import { lossAssociation } from './lossAssociation.ts';

/** A condition that may have gone before losses, and how it was for each lot, in the lots' order. */
export type LossFactor = {
  /** Term that hub/words turns into a label. */
  readonly what: string;
  /** For each lot: whether it was exposed; null for not known. */
  readonly exposed: readonly (boolean | null)[];
};

export type LossAssociation = {
  readonly what: string;
  readonly facts: SplitFacts;
  /** null where only counts may be shown. */
  readonly p: number | null;
  /** False discovery rate among all factors offered. */
  readonly q: number | null;
  readonly difference: {
    readonly difference: number;
    readonly low: number;
    readonly high: number;
  } | null;
  readonly words: AssociationWords;
  /** The other factor whose exposed lots are most the same: the rival to be named beside it. */
  readonly rival: string | null;
};

/**
 * What may be said, as terms. "nothing-to-see" is not "no effect", and none is a cause.
 * Bands are common practice, no source.
 */
export type AssociationWords = 'counts-only' | 'worth-a-trial' | 'a-hint' | 'nothing-to-see';

const TRIAL = { q: 0.05, lots: 12 } as const;
const HINT = 0.2; // q

/**
 * The words for a false discovery rate over n lots.
 * @param q null where only counts may be shown
 * @throws RangeError for q outside 0..1 or lots below 0
 */
export function associationWords(q: number | null, lots: number): AssociationWords {
  expectRange('lots', lots, 0, Number.MAX_SAFE_INTEGER, '');
  if (q === null) return 'counts-only';
  expectRange('false discovery rate', q, 0, 1, '');
  if (q <= TRIAL.q && lots >= TRIAL.lots) return 'worth-a-trial';
  return q <= HINT ? 'a-hint' : 'nothing-to-see';
}

export type LossFindings = {
  readonly associations: readonly LossAssociation[];
  /** How many comparisons were offered, to be printed with every one of them. */
  readonly tried: number;
};

/**
 * Which conditions lost lots had been in more often than kept ones. Facts and terms: no cause is
 * named. Every factor offered counts among the comparisons, also one with counts only.
 * @param lost for each lot; null for not known yet
 * @throws RangeError when a factor has not one entry for each lot
 */
export function lossAssociations(
  lost: readonly (boolean | null)[],
  factors: readonly LossFactor[],
): LossFindings {
  const tests = factors.map(({ what, exposed }) => {
    expectRange(`entries of ${what}`, exposed.length, lost.length, lost.length, '');
    const lots: LotExposure[] = exposed.map((each, i) => ({
      exposed: each,
      lost: lost[i] ?? null,
    }));
    return { what, exposed, ...lossAssociation(exposureSplit(lots)) };
  });
  // One that may show counts only was offered all the same, and counts as a comparison without a find.
  const rates = benjaminiHochberg(tests.map(({ p }) => p ?? 1));
  const associations = tests.map(({ what, exposed, facts, p, difference }, index) => {
    const q = p === null ? null : (rates[index] ?? null);
    return {
      what,
      facts,
      p,
      q,
      difference,
      words: associationWords(q, facts.lots),
      rival: rivalOf(what, exposed, factors),
    };
  });
  return { associations, tried: factors.length };
}

const LIKE = 0.5; // of the pairs beyond chance agreement; ours: below it another factor is no rival

/** The factor most alike by Cohen's kappa over lots where both are known. */
export function rivalOf(
  what: string,
  exposed: readonly (boolean | null)[],
  factors: readonly LossFactor[],
): string | null {
  let best: string | null = null;
  let most: number = LIKE;
  for (const other of factors) {
    if (other.what === what) continue;
    const alike = kappa(exposed, other.exposed);
    if (alike !== null && alike >= most) {
      most = alike;
      best = other.what;
    }
  }
  return best;
}

// Source: Cohen 1960, Educ. Psychol. Meas. 20:37.
function kappa(a: readonly (boolean | null)[], b: readonly (boolean | null)[]): number | null {
  const pairs = a.flatMap((left, i) => {
    const right = b[i] ?? null;
    return left === null || right === null ? [] : [[left, right] as const];
  });
  if (pairs.length === 0) return null;
  const share = (test: (pair: readonly [boolean, boolean]) => boolean) =>
    pairs.filter(test).length / pairs.length;
  const left = share(([x]) => x);
  const right = share(([, y]) => y);
  const chance = left * right + (1 - left) * (1 - right);
  return chance === 1 ? null : (share(([x, y]) => x === y) - chance) / (1 - chance);
}
