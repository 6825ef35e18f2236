import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { type Probability, probability } from '../units.ts';
import { expectCount } from './expectCount.ts';

/**
 * What many comparisons leave of each chance: the false discovery rate q at which it would be kept,
 * q_(i) = min over j >= i of m p_(j) / j, in the order given. Give every comparison that was
 * offered, not only those shown.
 *
 * Source: Benjamini & Hochberg 1995, J. R. Stat. Soc. B 57:289, step-up procedure.
 * @throws RangeError for a chance outside 0..1
 */
export function benjaminiHochberg(chances: readonly number[]): Probability[] {
  // null would pass as 0, the strongest find of all.
  for (const p of chances) expectRange('chance', p ?? Number.NaN, 0, 1, '');
  const order = chances.map((p, index) => ({ p, index })).sort((a, b) => b.p - a.p);
  const result = new Array<Probability>(chances.length);
  let least = 1;
  order.forEach(({ p, index }, place) => {
    const rank = chances.length - place;
    least = Math.min(least, (chances.length * p) / rank);
    result[index] = probability(least);
  });
  return result;
}

/**
 * Chance that at least one of `comparisons` without any truth in them comes out below `level`,
 * were they independent: 1 - (1 - level)^m.
 * @throws RangeError unless comparisons is a whole number from 0 and level 0..1
 */
export const chanceOfFalseFind = orUnknown(function chanceOfFalseFind(
  comparisons: number,
  level: number = 0.05,
): Probability {
  expectCount('comparisons', comparisons);
  expectRange('level', level, 0, 1, '');
  return probability(1 - (1 - level) ** comparisons);
});
