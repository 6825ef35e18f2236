import type { Probability } from '../units.ts';
import { expectCount } from './expectCount.ts';
import { expectNumbers } from './expectNumbers.ts';
import { ranks } from './ranks.ts';
import { splitShare } from './splitShare.ts';

/**
 * Whether one group of lots lies higher than another: the rank-sum test of Wilcoxon 1945 (Mann &
 * Whitney 1947). `w` is the sum of the ranks of `a`, equal values sharing the middle of theirs; `p`
 * is two-sided, exact by all choices of places for up to 200,000 of them (two groups of ten), by
 * 99,999 seeded random ones beyond.
 *
 * Days in a row are not independent: give one value for each lot or week, not for each reading.
 * @throws RangeError for an empty group, or a value that is no number
 */
export function rankSum(
  a: readonly number[],
  b: readonly number[],
): { readonly w: number; readonly p: Probability; readonly exact: boolean } {
  expectCount('values in the first group', a.length, 1);
  expectCount('values in the second group', b.length, 1);
  expectNumbers('value', a);
  expectNumbers('value', b);
  const all = ranks([...a, ...b]);
  const w = all.slice(0, a.length).reduce((sum, rank) => sum + rank, 0);
  return { w, ...splitShare(all, a.length) };
}
