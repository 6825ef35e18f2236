import { type Probability, probability } from '../units.ts';
import { drawnShareOf } from './drawnShareOf.ts';
import { seeded } from './seeded.ts';

const MOST_EXACT = 200_000; // ours; 20 values in two tens, some milliseconds
const DRAWS = 99_999; // so that p has steps of 1 / 100,000
const SEED = 20_047; // ours; any constant will do, it only has to stay the same
const HAIR = 1e-9; // relative; the same sum added in another order differs in its last digits

export type SplitShare = { readonly p: Probability; readonly exact: boolean };

/**
 * Share of the ways to choose `size` of `values` whose sum is at least as far from what is to be
 * expected, size times the mean, as that of the first `size`: two-sided. All ways, up to 200,000 of
 * them; else 99,999 seeded random ones.
 */
export function splitShare(values: readonly number[], size: number): SplitShare {
  const n = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  const away = Float64Array.from(values, (value) => value - mean);
  const scale = away.reduce((sum, value) => sum + Math.abs(value), 0);
  let observed = 0;
  for (let i = 0; i < size; i += 1) observed += away[i] ?? 0;
  const limit = Math.abs(observed) - HAIR * scale;
  return ways(n, size) <= MOST_EXACT
    ? { p: probability(everySplit(away, size, limit)), exact: true }
    : { p: drawnSplits(away, size, limit), exact: false };
}

/** Number of ways to choose `size` of `n`; grows past any need, never below its true value. */
export function ways(n: number, size: number): number {
  let count = 1;
  for (let i = 1; i <= Math.min(size, n - size); i += 1) count = (count * (n - i + 1)) / i;
  return Math.round(count);
}

function everySplit(away: Float64Array, size: number, limit: number): number {
  let all = 0;
  let asFar = 0;
  const choose = (from: number, left: number, sum: number) => {
    if (left === 0) {
      all += 1;
      if (Math.abs(sum) >= limit) asFar += 1;
      return;
    }
    for (let i = from; i <= away.length - left; i += 1)
      choose(i + 1, left - 1, sum + (away[i] ?? 0));
  };
  choose(0, size, 0);
  return asFar / all;
}

function drawnSplits(away: Float64Array, size: number, limit: number): Probability {
  const random = seeded(SEED);
  let asFar = 0;
  for (let draw = 0; draw < DRAWS; draw += 1) {
    let sum = 0;
    // Only the first places need a shuffle: they are the group.
    for (let i = 0; i < size; i += 1) {
      const j = i + Math.floor(random() * (away.length - i));
      const held = away[i] ?? 0;
      away[i] = away[j] ?? 0;
      away[j] = held;
      sum += away[i] ?? 0;
    }
    if (Math.abs(sum) >= limit) asFar += 1;
  }
  return drawnShareOf(asFar, DRAWS);
}
