import { expectRange } from '../expectRange.ts';
import { meanOf, studentQuantile } from '../statistics/index.ts';

const USUAL_CHANCE = 0.8; // of reaching the weight; ours, a setting
const FEWEST = 3; // batches before their spread is used; ours
const MOST_MARGIN = 2; // never more than twice the trays the mean asks for; ours

/**
 * Trays to sow so that the wanted weight is reached with a chance: kg over what a tray of the next
 * batch gives at least, with that chance (mean - t(n - 1) s √(1 + 1/n) of past batches). With one or
 * two batches the mean alone, which falls short every second time.
 * @param perTray kg a tray of each past batch, or one figure of the grower's
 * @throws RangeError without any figure, for weights outside 0..1000 kg or a chance outside 0.5..0.99
 */
export function traysFor(
  kilograms: number,
  perTray: readonly number[],
  chance: number = USUAL_CHANCE,
): number {
  expectRange('wanted weight', kilograms, 0, 100_000, 'kg');
  expectRange('number of past batches', perTray.length, 1, 10_000, '');
  for (const each of perTray) expectRange('weight of a tray', each, 0.001, 1000, 'kg');
  expectRange('wanted chance', chance, 0.5, 0.99, '');
  const n = perTray.length;
  const mean = meanOf(perTray);
  const squares = perTray.reduce((sum, each) => sum + (each - mean) ** 2, 0);
  const spread = n < FEWEST ? 0 : Math.sqrt((squares / (n - 1)) * (1 + 1 / n));
  const least = spread === 0 ? mean : mean - studentQuantile(chance, n - 1) * spread;
  if (kilograms === 0) return 0;
  // A hair below a whole number of trays is that number: 0.35 kg x 20 is 7 kg.
  return Math.max(1, Math.ceil(kilograms / Math.max(least, mean / MOST_MARGIN) - 1e-9));
}
