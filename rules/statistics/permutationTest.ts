import type { Probability } from '../units.ts';
import { expectCount } from './expectCount.ts';
import { expectNumbers } from './expectNumbers.ts';
import { meanOf } from './meanOf.ts';
import { splitShare } from './splitShare.ts';

/**
 * Whether two groups differ in their mean: `difference` is mean(a) - mean(b), and `p` the two-sided
 * chance of one as large if the labels were arbitrary. Exact for up to 200,000 ways to label, by
 * 99,999 seeded random ones beyond.
 *
 * Days in a row are not independent: give one value for each lot or week, not for each reading.
 * Source: Fisher 1935, The Design of Experiments, section 21; Pitman 1937 (both from memory).
 * @throws RangeError for an empty group, or a value that is no number
 */
export function permutationTest(
  a: readonly number[],
  b: readonly number[],
): { readonly difference: number; readonly p: Probability; readonly exact: boolean } {
  expectCount('values in the first group', a.length, 1);
  expectCount('values in the second group', b.length, 1);
  expectNumbers('value', a);
  expectNumbers('value', b);
  return { difference: meanOf(a) - meanOf(b), ...splitShare([...a, ...b], a.length) };
}
