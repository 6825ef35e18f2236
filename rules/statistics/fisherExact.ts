import { orUnknown } from '../orUnknown.ts';
import { type Probability, probability } from '../units.ts';
import { expectCount } from './expectCount.ts';
import { tablesLike } from './hypergeometric.ts';

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
export const fisherExact = orUnknown(function fisherExact(
  a: number,
  b: number,
  c: number,
  d: number,
): { readonly p: Probability; readonly oddsRatio: number | null } {
  for (const count of [a, b, c, d]) expectCount('lots', count);
  if (a + b === 0 || c + d === 0 || a + c === 0 || b + d === 0) {
    return { p: probability(1), oddsRatio: null };
  }
  const { low, chances } = tablesLike(a, b, c, d);
  const observed = (chances[a - low] ?? 0) * ROUNDING;
  const p = chances.reduce((sum, each) => (each <= observed ? sum + each : sum), 0);
  return { p: probability(Math.min(1, p)), oddsRatio: (a * d) / (b * c) };
});

/**
 * The same test one-sided: the chance that at least `a` ("more"), or at most `a` ("fewer"), of
 * the lost lots would be among the exposed. To be used only where the side was named beforehand.
 * @throws RangeError unless all four are whole numbers from 0
 */
export const fisherExactOneSided = orUnknown(function fisherExactOneSided(
  a: number,
  b: number,
  c: number,
  d: number,
  side: 'more' | 'fewer' = 'more',
): Probability {
  for (const count of [a, b, c, d]) expectCount('lots', count);
  const { low, chances } = tablesLike(a, b, c, d);
  const tail = side === 'more' ? chances.slice(a - low) : chances.slice(0, a - low + 1);
  return probability(
    Math.min(
      1,
      tail.reduce((sum, each) => sum + each, 0),
    ),
  );
});
