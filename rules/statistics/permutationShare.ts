import { drawnShareOf } from './drawnShareOf.ts';
import { seeded } from './seeded.ts';

const MOST_EXACT = 9; // 9! = 362,880 arrangements, some milliseconds; 10! is ten times that
const DRAWS = 99_999; // so that p has steps of 1 / 100,000
const SEED = 20_047; // ours; any constant will do, it only has to stay the same
const HAIR = 1e-9; // sums of half-ranks are exact, their order of adding is not

/**
 * Share of the arrangements of `right` against `left` (both centred on 0) whose product sum is at
 * least as far from 0 as the given one.
 */
export function permutationShare(left: readonly number[], right: readonly number[]): number {
  const a = Float64Array.from(left);
  const b = Float64Array.from(right);
  const limit = Math.abs(productSum(a, b)) - HAIR;
  return a.length <= MOST_EXACT ? exactShare(a, b, limit) : drawnShare(a, b, limit);
}

// Every arrangement by swapping two at a time: Heap 1963, Comput. J. 6:293, written as a loop.
function exactShare(a: Float64Array, b: Float64Array, limit: number): number {
  const counters = new Uint8Array(b.length);
  let asStrong = Math.abs(productSum(a, b)) >= limit ? 1 : 0;
  let all = 1;
  let index = 1;
  while (index < b.length) {
    const counter = counters[index] ?? 0;
    if (counter < index) {
      swap(b, index % 2 === 0 ? 0 : counter, index);
      if (Math.abs(productSum(a, b)) >= limit) asStrong += 1;
      all += 1;
      counters[index] = counter + 1;
      index = 1;
    } else {
      counters[index] = 0;
      index += 1;
    }
  }
  return asStrong / all;
}

function drawnShare(a: Float64Array, b: Float64Array, limit: number): number {
  const random = seeded(SEED);
  let asStrong = 0;
  for (let draw = 0; draw < DRAWS; draw += 1) {
    for (let index = b.length - 1; index > 0; index -= 1) {
      swap(b, Math.floor(random() * (index + 1)), index);
    }
    if (Math.abs(productSum(a, b)) >= limit) asStrong += 1;
  }
  return drawnShareOf(asStrong, DRAWS);
}

function productSum(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let index = 0; index < a.length; index += 1) sum += (a[index] ?? 0) * (b[index] ?? 0);
  return sum;
}

function swap(list: Float64Array, i: number, j: number) {
  const held = list[i] ?? 0;
  list[i] = list[j] ?? 0;
  list[j] = held;
}
