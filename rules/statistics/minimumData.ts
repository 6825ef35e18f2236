import { orUnknown } from '../orUnknown.ts';
import { type Probability, probability } from '../units.ts';
import { expectCount } from './expectCount.ts';
import { ways } from './splitShare.ts';

// Under these a comparison shows counts and nothing else. Common practice, no source: with three
// against three even a perfect split comes by chance once in ten.
export const FEWEST_LOTS = 6; // in both groups together
export const FEWEST_IN_GROUP = 3;

/**
 * Whether two groups of lots are enough for a comparison; otherwise only counts may be shown.
 * @throws RangeError unless both are whole numbers from 0
 */
export const enoughToCompare = orUnknown(function enoughToCompare(
  first: number,
  second: number,
): boolean {
  expectCount('lots', first);
  expectCount('lots', second);
  return first + second >= FEWEST_LOTS && Math.min(first, second) >= FEWEST_IN_GROUP;
});

/**
 * The least two-sided chance Fisher's test can give for groups of these sizes: all of one lost and
 * none of the other. When it is above 0.05 no result could ever count as more than chance; when it
 * stands on one table alone (groups of unequal size), one misfiled lot undoes it.
 * @throws RangeError unless both are whole numbers from 1
 */
export const leastFisherP = orUnknown(function leastFisherP(
  first: number,
  second: number,
): Probability {
  expectCount('lots', first, 1, 500);
  expectCount('lots', second, 1, 500);
  const tables = first === second ? 2 : 1; // the mirrored split is as unlikely only then
  return probability(Math.min(1, tables / ways(first + second, first)));
});
