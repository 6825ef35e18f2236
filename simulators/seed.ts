// Chance that depends on nothing but (seed, name, index), so that the weather of a moment is the
// same whoever asks for it and in whatever order. A counter-based generator gives exactly that.
//
// Philox2x32-10: Salmon, Moraes, Dror & Shaw 2011, "Parallel random numbers: as easy as 1, 2, 3",
// Proc. SC11, section 3 (the constants are in its table of multipliers and Weyl keys).
const MULTIPLIER = 0xd256d193;
const WEYL = 0x9e3779b9;
const ROUNDS = 10;

const TWO_32 = 2 ** 32;

/** Upper half of a 32 × 32 bit product: `Math.imul` keeps only the lower. */
function upperProduct(a: number, b: number): number {
  const aLow = a & 0xffff;
  const aHigh = a >>> 16;
  const bLow = b & 0xffff;
  const bHigh = b >>> 16;
  const middle = aHigh * bLow + ((aLow * bLow) >>> 16);
  const carry = aLow * bHigh + (middle & 0xffff);
  return (aHigh * bHigh + Math.floor(middle / 65536) + Math.floor(carry / 65536)) >>> 0;
}

/** Two 32-bit words from a 64-bit counter (two words) and a 32-bit key. */
export function philox(counter0: number, counter1: number, key: number): [number, number] {
  let a = counter0 >>> 0;
  let b = counter1 >>> 0;
  let k = key >>> 0;
  for (let round = 0; round < ROUNDS; round++) {
    const high = upperProduct(MULTIPLIER, a);
    const low = Math.imul(MULTIPLIER, a) >>> 0;
    a = (high ^ k ^ b) >>> 0;
    b = low;
    k = (k + WEYL) >>> 0;
  }
  return [a, b];
}

/** FNV-1a, 32 bit (Fowler, Noll & Vo; IETF draft-eastlake-fnv): names become stream numbers. */
function streamOf(name: string): number {
  let hash = 0x811c9dc5;
  for (let at = 0; at < name.length; at++) {
    hash = Math.imul(hash ^ name.charCodeAt(at), 0x01000193);
  }
  return hash >>> 0;
}

export type Chance = {
  /** 0 ≤ value < 1 for a whole number `index`. */
  readonly uniform: (index: number) => number;
  /** Mean 0, standard deviation 1 (Box & Muller 1958). */
  readonly normal: (index: number) => number;
  /** Like `normal`, changing smoothly over about `period` (same unit as `t`); one period a stream. */
  readonly smooth: (t: number, period: number) => number;
};

/** A stream of its own for each name under one seed. */
export function createChance(seed: number, name: string): Chance {
  const stream = streamOf(name);
  const uniform = (index: number) => philox(index, stream, seed)[0] / TWO_32;
  const normal = (index: number) => {
    const [a, b] = philox(index, stream, seed);
    const radius = Math.sqrt(-2 * Math.log((a + 1) / TWO_32));
    return radius * Math.cos((2 * Math.PI * b) / TWO_32);
  };
  // Neighbouring knots are asked for thousands of times in a row.
  let knot = Number.NaN;
  let before = 0;
  let after = 0;
  const smooth = (t: number, period: number) => {
    const x = t / period;
    const index = Math.floor(x);
    if (index !== knot) {
      knot = index;
      before = normal(index);
      after = normal(index + 1);
    }
    // Weights that sum to one with level ends: no kinks at the knots, a little calmer between them.
    const angle = ((x - index) * Math.PI) / 2;
    return before * Math.cos(angle) ** 2 + after * Math.sin(angle) ** 2;
  };
  return { uniform, normal, smooth };
}
