import { expectRange } from '../expectRange.ts';
import { expectMoney } from '../money/index.ts';
import { orUnknown } from '../orUnknown.ts';

/** What was harvested or put in store, and what of it was lost, in one unit of weight. */
export type LotLoss = { readonly harvested: number | null; readonly lost: number | null };

export type PooledLoss = {
  /** Grams lost of each 1000 g harvested; null when nothing known was harvested. */
  readonly perThousand: number | null;
  readonly harvested: number;
  readonly lost: number;
  readonly lots: number;
  /** Lots left out, as their harvest or their loss is not known. */
  readonly unknownLots: number;
};

/**
 * Loss of several lots together: sums divided, because the mean of their rates would let a small
 * lot count as much as a large one. Lots with an unknown weight are left out and counted.
 * @throws RangeError for weights below 0, or more lost than there was
 */
export function pooledLoss(lots: readonly LotLoss[]): PooledLoss {
  let harvested = 0;
  let lost = 0;
  let known = 0;
  for (const lot of lots) {
    if (lot.harvested === null || lot.lost === null) continue;
    expectRange('harvest', lot.harvested, 0, Number.MAX_VALUE, '');
    expectRange('loss', lot.lost, 0, lot.harvested, '');
    harvested += lot.harvested;
    lost += lot.lost;
    known += 1;
  }
  return {
    perThousand: harvested === 0 ? null : (1000 * lost) / harvested,
    harvested,
    lost,
    lots: known,
    unknownLots: lots.length - known,
  };
}

/**
 * Money lost: weight times the price that grade would have fetched.
 * @throws RangeError for a weight or price below 0
 */
export const lossMoney = orUnknown(function lossMoney(kilograms: number, price: number): number {
  expectRange('weight lost', kilograms, 0, 10_000_000, 'kg');
  expectMoney('price', price);
  return kilograms * price;
});
