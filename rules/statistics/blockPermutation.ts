import { type Probability, probability } from '../units.ts';
import { drawnShareOf } from './drawnShareOf.ts';
import { seeded } from './seeded.ts';

/** One case, such as a place in a week. Cases of one block (the week) stand or fall together. */
export type BlockCase = {
  readonly block: string;
  /** Which of the block's cases it is: a case is only ever put in the place of its like. */
  readonly slot: string;
  readonly exposed: boolean;
  readonly lost: boolean;
};

const MOST_EXACT = 7; // blocks; 5040 orders, some milliseconds. Ours
const DRAWS = 9999; // so that p has steps of 1 / 10,000
const SEED = 19_790; // ours; any constant will do, it only has to stay the same
const HAIR = 1e-9; // the same difference divided in another order differs in its last digits

/**
 * Chance of a difference in loss between exposed and other cases at least as large, two-sided, if
 * the losses of whole blocks came in any order: several places under one week's weather are not
 * several witnesses. Exact for up to 7 blocks, by 9,999 seeded random orders beyond. A case that a
 * shuffled block knows nothing of is left out of that order.
 *
 * null where no case is exposed, or none is not: then there is nothing to compare.
 * Source: the permutation test of Fisher 1935 with blocks as units; Good 2005, Permutation,
 * Parametric and Bootstrap Tests of Hypotheses (from memory).
 */
export function blockPermutation(cases: readonly BlockCase[]): Probability | null {
  const slots = [...new Set(cases.map(({ slot }) => slot))];
  const blocks = [...new Set(cases.map(({ block }) => block))];
  const width = slots.length;
  const exposed = new Int8Array(blocks.length * width).fill(-1);
  const lost = new Int8Array(blocks.length * width).fill(-1);
  const slotAt = new Map(slots.map((slot, at) => [slot, at]));
  const blockAt = new Map(blocks.map((block, at) => [block, at]));
  for (const one of cases) {
    const at = (blockAt.get(one.block) ?? 0) * width + (slotAt.get(one.slot) ?? 0);
    exposed[at] = one.exposed ? 1 : 0;
    lost[at] = one.lost ? 1 : 0;
  }
  const order = blocks.map((_, at) => at);
  const observed = difference(exposed, lost, order, width);
  if (observed === null) return null;
  const limit = Math.abs(observed) - HAIR;
  let [asStrong, all] = [0, 0];
  const count = () => {
    const found = difference(exposed, lost, order, width);
    all += 1;
    // An order that leaves one group empty says nothing against chance.
    if (found === null || Math.abs(found) >= limit) asStrong += 1;
  };
  if (blocks.length <= MOST_EXACT) {
    everyOrder(order, order.length, count);
    return probability(asStrong / all);
  }
  const random = seeded(SEED);
  for (let draw = 0; draw < DRAWS; draw += 1) {
    for (let at = order.length - 1; at > 0; at -= 1)
      swap(order, at, Math.floor(random() * (at + 1)));
    count();
  }
  return drawnShareOf(asStrong, DRAWS);
}

/** Share lost of the exposed less that of the others, with the losses of block order[b] put to b. */
function difference(
  exposed: Int8Array,
  lost: Int8Array,
  order: readonly number[],
  width: number,
): number | null {
  let [on, onLost, off, offLost] = [0, 0, 0, 0];
  for (let block = 0; block < order.length; block += 1) {
    const from = (order[block] ?? 0) * width;
    for (let slot = 0; slot < width; slot += 1) {
      const was = exposed[block * width + slot];
      const gone = lost[from + slot] ?? -1;
      if (gone < 0) continue;
      if (was === 1) {
        on += 1;
        onLost += gone;
      } else if (was === 0) {
        off += 1;
        offLost += gone;
      }
    }
  }
  return on === 0 || off === 0 ? null : onLost / on - offLost / off;
}

/** Heap's algorithm: each order once. */
function everyOrder(order: number[], size: number, visit: () => void) {
  if (size <= 1) return visit();
  for (let at = 0; at < size; at += 1) {
    everyOrder(order, size - 1, visit);
    if (at < size - 1) swap(order, size % 2 === 0 ? at : 0, size - 1);
  }
}

function swap(order: number[], i: number, j: number) {
  const held = order[i] ?? 0;
  order[i] = order[j] ?? 0;
  order[j] = held;
}
