import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { type Probability, probability } from '../units.ts';

/**
 * Chance of at least one bad season in `years`, each bad with chance `p` on its own: 1 - (1 - p)^n.
 *
 * Source: the idea in Snyder & de Melo-Abreu 2005, FAO vol. 2.
 * @throws RangeError for a chance outside 0..1, or years outside 0..1000
 */
export const riskOverYears = orUnknown(function riskOverYears(
  p: number,
  years: number,
): Probability {
  expectRange('probability', p, 0, 1, '');
  expectRange('years', years, 0, 1000, '');
  return probability(1 - (1 - p) ** years);
});
