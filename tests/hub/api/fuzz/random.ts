export type Random = ReturnType<typeof makeRandom>;

/** Numbers by chance that a seed brings back (mulberry32, a public-domain generator). */
export function makeRandom(seed: number) {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    next,
    below: (n: number) => Math.floor(next() * n),
    chance: (p: number) => next() < p,
    pick: <Item>(items: readonly Item[]): Item => items[Math.floor(next() * items.length)] as Item,
  };
}

/** The seed of this run: a number in DEWPOST_SEED, or another one each time. */
export function seedOfRun(): number {
  const given = Number(process.env.DEWPOST_SEED);
  return Number.isInteger(given) && given > 0 ? given : 1 + Math.floor(Math.random() * 2 ** 31);
}
