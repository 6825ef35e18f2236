import { type Probability, probability } from '../units.ts';
import { expectCount } from './expectCount.ts';
import { lnGamma } from './lnGamma.ts';

// Tables as likely as the observed one count as "not more likely"; their probabilities come out
// of logarithms and differ in the last digits. The same allowance as common statistics packages.
const ROUNDING = 1 + 1e-7;

/**
 * Whether a split of two groups is more uneven than chance: the exact test of Fisher 1935,
 * two-sided by the sum of all tables not more likely than the observed.
 *
 *              lost  kept
 *   exposed     a     b
 *   not         c     d
 *
 * `oddsRatio` is that of the sample, ad / bc: Infinity when only bc is 0, null when a whole row
 * or column is empty (then p is 1: the table can say nothing).
 * @throws RangeError unless all four are whole numbers from 0
 */
export function fisherExact(
  a: number,
  b: number,
  c: number,
  d: number,
): { readonly p: Probability; readonly oddsRatio: number | null } {
  expectCount('lots', a);
  expectCount('lots', b);
  expectCount('lots', c);
  expectCount('lots', d);

  const row = a + b;
  const column = a + c;
  const n = a + b + c + d;
  if (row === 0 || column === 0 || row === n || column === n) {
    return { p: probability(1), oddsRatio: null };
  }

  const lnAll = lnChoose(n, column);
  const chance = (x: number) => Math.exp(lnChoose(row, x) + lnChoose(n - row, column - x) - lnAll);
  const observed = chance(a) * ROUNDING;
  let p = 0;
  for (let x = Math.max(0, column - (n - row)); x <= Math.min(row, column); x += 1) {
    const each = chance(x);
    if (each <= observed) p += each;
  }
  return { p: probability(Math.min(1, p)), oddsRatio: (a * d) / (b * c) };
}

const lnChoose = (n: number, k: number) => lnGamma(n + 1) - lnGamma(k + 1) - lnGamma(n - k + 1);
