import { expectRange } from '../expectRange.ts';
import type { WantedWeight } from './sowingPlan.ts';

// Days are counted from today: 0 is today.

/** What is there already, or on its way: a batch that grows, or a lot that is stored. */
export type Supply = {
  readonly id: string;
  readonly crop: string;
  readonly kilograms: number;
  /** First and last day on which it can be delivered. */
  readonly from: number;
  readonly until: number;
  /** Delivery day it was sown for; null for none. */
  readonly meantFor: number | null;
};

/** So much of a supply goes to that delivery. */
export type Covered = {
  readonly delivery: number;
  readonly crop: string;
  readonly supply: string;
  readonly kilograms: number;
};

// Less than a gram is nobody's shortfall; ours.
const GRAM = 0.001; // kg

/**
 * Which delivery gets what is there and what grows: first each supply the delivery it was sown for,
 * then, the nearest delivery first, what is over soonest. A supply may be shared out; what no
 * supply covers is left `open`, and has to be sown for.
 *
 * Ours, from no source; taking what is over soonest for the nearest delivery leaves the least
 * uncovered where each supply has a first and a last day (earliest deadline first, textbook).
 * @throws RangeError for weights below 0 or a day of delivery outside 0..366
 */
export function coverWants(
  wanted: readonly WantedWeight[],
  supplies: readonly Supply[],
): { readonly covered: readonly Covered[]; readonly open: readonly WantedWeight[] } {
  const left = supplies.map(({ kilograms }) => {
    expectRange('weight of a supply', kilograms, 0, 100_000, 'kg');
    return kilograms;
  });
  const asks = [...wanted]
    .sort((a, b) => a.delivery - b.delivery)
    .map((want) => {
      expectRange('day of delivery', want.delivery, 0, 366, 'd');
      expectRange('wanted weight', want.kilograms, 0, 100_000, 'kg');
      return { want, open: want.kilograms };
    });
  const covered: Covered[] = [];
  const order = supplies
    .map((supply, index) => ({ supply, index }))
    .sort((a, b) => a.supply.until - b.supply.until || a.supply.from - b.supply.from);
  const give = (fits: (supply: Supply, want: WantedWeight) => boolean) => {
    for (const ask of asks)
      for (const { supply, index } of order) {
        const { delivery, crop } = ask.want;
        const reaches = supply.crop === crop && supply.from <= delivery && delivery <= supply.until;
        const kilograms = Math.min(ask.open, left[index] ?? 0);
        if (!reaches || kilograms < GRAM || !fits(supply, ask.want)) continue;
        left[index] = (left[index] ?? 0) - kilograms;
        ask.open -= kilograms;
        covered.push({ delivery, crop, supply: supply.id, kilograms });
      }
  };
  give((supply, want) => supply.meantFor === want.delivery);
  give(() => true);
  return {
    covered,
    open: asks.flatMap(({ want, open }) => (open < GRAM ? [] : [{ ...want, kilograms: open }])),
  };
}
