import { expectRange } from '../expectRange.ts';
import { studentCdf } from '../statistics/index.ts';
import { type Probability, probability } from '../units.ts';

/** A part of a delivery: a batch, a sowing or a stored lot. */
export type DeliveryShare = {
  /** Expected weight when it is ready, kg, and its standard deviation. */
  readonly kilograms: number;
  readonly sd: number;
  /** Chance that it is ready, and not over, on the day. */
  readonly ready: number;
};

// 2^16 ways of being ready are summed up in milliseconds; what is beyond them counts as not there, so
// that it never looks safer than it is. Ours.
const MOST = 16;
// Scales cannot tell less than a gram; ours.
const GRAM = 0.001; // kg

/**
 * Chance that a delivery is short of the weight wanted: over all ways in which its shares may be
 * ready or not, each apart, the chance that the weight of those that are stays below it. Weights
 * follow a t distribution about their sum.
 *
 * Source: sum over all outcomes, textbook; that shares fail each for itself is ours: one cold week
 * delays them all, so the true chance is somewhat nearer to that of the worst one alone.
 * @param df degrees of freedom of the spread of weights: past batches less one
 * @throws RangeError for weights or spreads below 0, chances outside 0..1, df not from 0.1 upwards
 */
export function chanceShort(
  kilograms: number,
  shares: readonly DeliveryShare[],
  df: number,
): Probability {
  expectRange('wanted weight', kilograms, 0, 100_000, 'kg');
  let sureWeight = 0;
  let sureSpread = 0;
  const unsure: DeliveryShare[] = [];
  for (const share of shares) {
    expectRange('weight of a share', share.kilograms, 0, 100_000, 'kg');
    expectRange('spread of a share', share.sd, 0, 100_000, 'kg');
    expectRange('chance of being ready', share.ready, 0, 1, '');
    if (share.ready === 1) {
      sureWeight += share.kilograms;
      sureSpread += share.sd ** 2;
    } else if (share.ready > 0) unsure.push(share);
  }
  unsure.sort((a, b) => b.kilograms * b.ready - a.kilograms * a.ready);
  const counted = unsure.slice(0, MOST);
  const short = (weight: number, spread: number): number => {
    const over = weight - kilograms;
    if (spread === 0) return over < -GRAM ? 1 : 0;
    return studentCdf(-(over + GRAM) / Math.sqrt(spread), df);
  };
  const walk = (at: number, weight: number, spread: number): number => {
    const share = counted[at];
    if (share === undefined) return short(weight, spread);
    const { ready, sd } = share;
    return (
      ready * walk(at + 1, weight + share.kilograms, spread + sd ** 2) +
      (1 - ready) * walk(at + 1, weight, spread)
    );
  };
  if (kilograms === 0) return probability(0);
  return probability(Math.min(1, Math.max(0, walk(0, sureWeight, sureSpread))));
}
