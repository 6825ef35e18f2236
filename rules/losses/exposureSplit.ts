import { expectRange } from '../expectRange.ts';

export type LotExposure = {
  /** null for not known: too few readings to say. */
  readonly exposed: boolean | null;
  readonly lost: boolean | null;
};

/** Two by two: lost and kept against exposed and not. */
export type SplitFacts = {
  readonly exposedLost: number;
  readonly exposedKept: number;
  readonly otherLost: number;
  readonly otherKept: number;
  /** In the four. */
  readonly lots: number;
  /** Left out, as exposure or outcome is not known. */
  readonly unknownLots: number;
};

/** Counts lots by exposure and outcome; one with an unknown is left out and counted apart. */
export function exposureSplit(lots: readonly LotExposure[]): SplitFacts {
  const count = (exposed: boolean, lost: boolean) =>
    lots.filter((lot) => lot.exposed === exposed && lot.lost === lost).length;
  const exposedLost = count(true, true);
  const exposedKept = count(true, false);
  const otherLost = count(false, true);
  const otherKept = count(false, false);
  const known = exposedLost + exposedKept + otherLost + otherKept;
  return {
    exposedLost,
    exposedKept,
    otherLost,
    otherKept,
    lots: known,
    unknownLots: lots.length - known,
  };
}

/**
 * Whether a lot was exposed: more than `most` of something (hours over a limit, say). What is not
 * known may have been over: the answer is sure only when the known part alone is over, or the known
 * and the unknown together are not; else it is null.
 * @param known amount seen, and `unknown` amount that may have been; in one unit, from 0
 * @throws RangeError for amounts below 0
 */
export function isExposed(
  { known, unknown }: { readonly known: number; readonly unknown: number },
  most: number,
): boolean | null {
  expectRange('known amount', known, 0, Number.MAX_VALUE, '');
  expectRange('unknown amount', unknown, 0, Number.MAX_VALUE, '');
  expectRange('limit of exposure', most, 0, Number.MAX_VALUE, '');
  if (known > most) return true;
  return known + unknown > most ? null : false;
}
