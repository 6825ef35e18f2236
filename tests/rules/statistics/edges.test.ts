import { expect, test } from 'vitest';
import {
  bootstrapInterval,
  brierParts,
  permutationTest,
  rankSum,
  spearman,
  studentQuantile,
} from '../../../rules/statistics/index.ts';
import { seeded } from '../../../rules/statistics/seeded.ts';

test('nineteen forecasts are not enough for the parts of a score, twenty are', () => {
  // Common practice, no source.
  const forecasts = (n: number) => brierParts(Array(n).fill(0.5), Array(n).fill(1)).enough;
  expect(forecasts(19)).toBe(false);
  expect(forecasts(20)).toBe(true);
});

test.for([
  [0.495, 5, -0.013171984672646872],
  [0.505, 5, 0.013171984672646872],
  [0.51, 5, 0.026346712342273235],
  [0.51, 2, 0.028289929799333573],
  [0.505, 1, 0.01570925532366489],
  [0.5, 3, 0],
] as const)('chance %d with %d degrees of freedom is t = %d, near the middle', ([p, df, t]) => {
  // SciPy 1.17 (stats.t.ppf).
  expect(studentQuantile(p, df)).toBeCloseTo(t, 11);
});

test('splits are counted up to 200,000 ways and drawn beyond', () => {
  // By hand: two of 632 in 632 x 631 / 2 = 199,396 ways, two of 633 in 200,028. The two least of n:
  // no other sum is as low, one is as high, so 2 in all ways.
  const values = (n: number) => Array.from({ length: n - 2 }, (_, index) => index + 3);
  const counted = rankSum([1, 2], values(632));
  expect(counted.exact).toBe(true);
  expect(counted.p * 199_396).toBeCloseTo(2, 6);
  expect(rankSum([1, 2], values(633)).exact).toBe(false);
});

test('the numbers drawn are those of the published generator, so a chance stays what it was', () => {
  // "mulberry32" (public domain, from memory) written again in Python; sums of the drawn splits of
  // two groups of twelve counted there too, with the seed 20,047.
  const random = seeded(7);
  const first = [0.011704753153026104, 0.06195825757458806, 0.97690763277933];
  expect(first.map(() => random())).toEqual(first);
  const a = [3.1, 4.7, 5.2, 6.3, 7.9, 8.4, 9.6, 10.1, 11.8, 12.5, 13.3, 14.2];
  const b = [2.2, 5.9, 6.8, 9.1, 11.1, 12.9, 13.9, 15.4, 16.3, 17.7, 4.1, 8.9];
  expect(rankSum(a, b).p).toBeCloseTo(0.47615, 12);
  expect(permutationTest(a, b).p).toBeCloseTo(0.42801, 12);
  // Ten pairs are shuffled, in Python the same way; by t it would be 0.138 (SciPy 1.17).
  const order = [4, 1, 7, 2, 10, 5, 3, 8, 6, 9];
  const drawn = spearman([1, 2, 3, 4, 5, 6, 7, 8, 9, 10], order).p;
  expect(drawn).toBeCloseTo(0.14274, 12);
  const harvests = [12.1, 9.8, 14.3, 11.0, 10.4, 13.7, 8.9, 12.6, 11.9, 10.8];
  const found = bootstrapInterval(harvests, null, { seed: 7, draws: 199 });
  expect(found?.low).toBeCloseTo(10.6795, 9);
  expect(found?.high).toBeCloseTo(12.5905, 9);
});
