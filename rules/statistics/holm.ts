import { expectRange } from '../expectRange.ts';
import { type Probability, probability } from '../units.ts';

/**
 * What many comparisons leave of each chance when not one false find is wanted: the adjusted chance
 * of the step-down procedure, max over j <= i of min(1, (m - j + 1) p_(j)), in the order given. Give
 * every comparison that was offered, not only those shown. Holds whatever ties the comparisons
 * to each other; never more forgiving than benjaminiHochberg.
 *
 * Source: Holm 1979, Scand. J. Stat. 6:65.
 * @throws RangeError for a chance outside 0..1
 */
export function holm(chances: readonly number[]): Probability[] {
  // null would pass as 0, the strongest find of all.
  for (const p of chances) expectRange('chance', p ?? Number.NaN, 0, 1, '');
  const order = chances.map((p, index) => ({ p, index })).sort((a, b) => a.p - b.p);
  const result = new Array<Probability>(chances.length);
  let most = 0;
  order.forEach(({ p, index }, before) => {
    most = Math.max(most, Math.min(1, (chances.length - before) * p));
    result[index] = probability(most);
  });
  return result;
}
