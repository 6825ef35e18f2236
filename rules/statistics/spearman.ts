import { expectRange } from '../expectRange.ts';
import { type Probability, probability } from '../units.ts';
import { expectNumbers } from './expectNumbers.ts';
import { permutationShare } from './permutationShare.ts';
import { ranks } from './ranks.ts';

/**
 * Whether two measures rise together: Spearman rank correlation with mid-ranks for ties, and the
 * two-sided chance of one at least as strong if the pairing were arbitrary. The chance is exact,
 * by all permutations, for up to 9 pairs; by 99,999 seeded random ones beyond, (b + 1) / (m + 1).
 * The same data always give the same answer.
 *
 * Both are null when one of the measures never changes: then there is nothing to correlate.
 * @throws RangeError unless x and y are lists of the same length, from 2 numbers upwards
 */
export function spearman(
  x: readonly number[],
  y: readonly number[],
): { readonly rho: number | null; readonly p: Probability | null } {
  expectRange('number of pairs', x.length, 2, Number.POSITIVE_INFINITY, '');
  expectRange('length of the second list', y.length, x.length, x.length, '');
  expectNumbers('value', x);
  expectNumbers('value', y);

  const left = centred(ranks(x));
  const right = centred(ranks(y));
  const size = Math.sqrt(product(left, left) * product(right, right));
  if (size === 0) return { rho: null, p: null };
  const rho = Math.max(-1, Math.min(1, product(left, right) / size));
  return { rho, p: probability(permutationShare(left, right)) };
}

function centred(values: readonly number[]): number[] {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.map((value) => value - mean);
}

const product = (a: readonly number[], b: readonly number[]) =>
  a.reduce((sum, value, index) => sum + value * (b[index] ?? 0), 0);
