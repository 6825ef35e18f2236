import fc from 'fast-check';
import { expect, test } from 'vitest';
import { createChance, philox } from '../../simulators/seed.ts';

// Known answers of philox2x32-10: file kat_vectors of the Random123 library (D. E. Shaw Research),
// from memory: counter, counter, key, then the two words that come out.
const known = [
  [0x00000000, 0x00000000, 0x00000000, 0xff1dae59, 0x6cd10df2],
  [0xffffffff, 0xffffffff, 0xffffffff, 0x2c3f628b, 0xab4fd7ad],
  [0x243f6a88, 0x85a308d3, 0x13198a2e, 0xdd7ce038, 0xf62a4c12],
] as const;

test.for(known)('Philox of %i, %i under key %i gives the published words', (row) => {
  const [counter0, counter1, key, first, second] = row;
  expect(philox(counter0, counter1, key)).toEqual([first, second]);
});

test('a draw depends on seed, name and index only', () => {
  fc.assert(
    fc.property(fc.nat(), fc.string(), fc.integer(), (seed, name, index) => {
      const asked = createChance(seed, name);
      for (let other = 0; other < 5; other++) asked.normal(other);
      return asked.uniform(index) === createChance(seed, name).uniform(index);
    }),
  );
});

test('uniform draws stay from 0 to below 1 and are spread evenly', () => {
  const { uniform } = createChance(3, 'spread');
  const draws = Array.from({ length: 20_000 }, (_, index) => uniform(index));
  expect(draws.every((value) => value >= 0 && value < 1)).toBe(true);
  for (let tenth = 0; tenth < 10; tenth++) {
    const inside = draws.filter((value) => Math.floor(value * 10) === tenth).length;
    // 2000 expected with a standard deviation of 42 (binomial); five of those.
    expect(Math.abs(inside - 2000)).toBeLessThan(212);
  }
});

test('normal draws have mean 0 and standard deviation 1', () => {
  const { normal } = createChance(3, 'spread');
  const draws = Array.from({ length: 20_000 }, (_, index) => normal(index));
  const mean = draws.reduce((sum, value) => sum + value, 0) / draws.length;
  const variance = draws.reduce((sum, value) => sum + (value - mean) ** 2, 0) / draws.length;
  expect(Math.abs(mean)).toBeLessThan(0.036); // five standard errors
  expect(Math.abs(variance - 1)).toBeLessThan(0.05); // five standard errors
});

test('smooth noise makes no jumps', () => {
  const chance = createChance(5, 'smooth');
  let last = chance.smooth(0, 100);
  for (let t = 1; t < 5000; t++) {
    const value = chance.smooth(t, 100);
    expect(Math.abs(value - last)).toBeLessThan(0.15);
    last = value;
  }
});
