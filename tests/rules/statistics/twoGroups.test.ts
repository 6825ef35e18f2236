import fc from 'fast-check';
import { wilcoxonRankSum } from 'simple-statistics';
import { expect, test } from 'vitest';
import {
  bootstrapInterval,
  drawnShareOf,
  permutationTest,
  rankSum,
} from '../../../rules/statistics/index.ts';
import { truth } from '../../truth/index.ts';

const numbers = (text: string) => text.split(' ').map(Number);
// To a millionth: in differences of 1e-323 a rounding is as large as the value.
const measured = fc
  .double({ min: -100, max: 100, noNaN: true })
  .map((v) => Math.round(v * 1e6) / 1e6);
const group = fc.array(measured, { minLength: 1, maxLength: 6 });

test.for(
  truth(
    'statistics/twoGroups.csv',
    ['w', 'rank_hits', 'all', 'difference', 'mean_hits'],
    ['a', 'b'],
  ),
)('$a against $b: $rank_hits of $all by ranks, $mean_hits by means', (row) => {
  const [a, b] = [numbers(row.a), numbers(row.b)];
  const ranked = rankSum(a, b);
  expect(ranked.w).toBe(row.w);
  expect(ranked.p).toBeCloseTo(row.rank_hits / row.all, 12);
  expect(ranked.exact).toBe(true);
  const meant = permutationTest(a, b);
  expect(meant.difference).toBeCloseTo(row.difference, 7);
  expect(meant.p).toBeCloseTo(row.mean_hits / row.all, 12);
});

test('the rank sum agrees with simple-statistics', () => {
  fc.assert(
    fc.property(group, group, (a, b) => Math.abs(rankSum(a, b).w - wilcoxonRankSum(a, b)) < 1e-9),
  );
});

test('which group comes first changes no chance', () => {
  fc.assert(
    fc.property(group, group, (a, b) => {
      return (
        Math.abs(rankSum(a, b).p - rankSum(b, a).p) < 1e-12 &&
        Math.abs(permutationTest(a, b).p - permutationTest(b, a).p) < 1e-12
      );
    }),
  );
});

test('two groups of twelve are drawn, near the exact chance, the same each time', () => {
  // By SciPy 1.17 (mannwhitneyu, exact), and by counting all sums of twelve in Python; 99,999 draws
  // have a spread of 0.0015.
  const a = [3.1, 4.7, 5.2, 6.3, 7.9, 8.4, 9.6, 10.1, 11.8, 12.5, 13.3, 14.2];
  const b = [2.2, 5.9, 6.8, 9.1, 11.1, 12.9, 13.9, 15.4, 16.3, 17.7, 4.1, 8.9];
  const drawn = rankSum(a, b);
  expect(drawn.exact).toBe(false);
  expect(Math.abs(drawn.p - 0.47758)).toBeLessThan(0.006);
  expect(rankSum(a, b)).toEqual(drawn);
  const means = permutationTest(a, b);
  expect(Math.abs(means.p - 0.42886)).toBeLessThan(0.006);
});

test('fourteen of 999 draws as strong make 0.015, and none makes no 0', () => {
  expect(drawnShareOf(14, 999)).toBe(0.015);
  expect(drawnShareOf(0, 999)).toBe(0.001);
  expect(() => drawnShareOf(5, 4)).toThrow(RangeError);
});

test('empty groups and values that are not known are refused', () => {
  expect(() => rankSum([], [1])).toThrow('Expected values in the first group from 1');
  expect(() => permutationTest([1], [])).toThrow('Expected values in the second group from 1');
  expect(() => rankSum([1, null as unknown as number], [2])).toThrow('got null');
  expect(() => permutationTest([1], [Number.NaN])).toThrow('got NaN');
});

const harvests = [12.1, 9.8, 14.3, 11.0, 10.4, 13.7, 8.9, 12.6, 11.9, 10.8];
const others = [9.1, 8.0, 10.2, 7.7, 9.9, 8.8, 10.9, 7.1];

test('the interval of a mean and of a difference come near those of SciPy', () => {
  // SciPy 1.17 (bootstrap, percentile, 99,999 draws); two draws of 9,999 differ by some 0.03.
  const one = bootstrapInterval(harvests);
  expect(one?.estimate).toBeCloseTo(11.55, 9);
  expect(Math.abs((one?.low ?? 0) - 10.57)).toBeLessThan(0.06);
  expect(Math.abs((one?.high ?? 0) - 12.56)).toBeLessThan(0.06);
  const two = bootstrapInterval(harvests, others);
  expect(two?.estimate).toBeCloseTo(2.5875, 9);
  expect(Math.abs((two?.low ?? 0) - 1.2775)).toBeLessThan(0.08);
  expect(Math.abs((two?.high ?? 0) - 3.91)).toBeLessThan(0.08);
});

test('the stored seed gives the same interval again, another seed another', () => {
  const first = bootstrapInterval(harvests, others, { seed: 7 });
  expect(first?.seed).toBe(7);
  expect(bootstrapInterval(harvests, others, { seed: 7 })).toEqual(first);
  expect(bootstrapInterval(harvests, others, { seed: 8 })).not.toEqual(first);
});

test('fewer than eight values have no interval, eight have', () => {
  expect(bootstrapInterval(harvests.slice(0, 7))).toBeNull();
  expect(bootstrapInterval(harvests, others.slice(0, 7))).toBeNull();
  expect(bootstrapInterval(harvests.slice(0, 8), null, { draws: 199 })).not.toBeNull();
});

test('an interval holds its estimate and widens with confidence', () => {
  const many = fc.array(fc.double({ min: 0, max: 50, noNaN: true }), {
    minLength: 8,
    maxLength: 12,
  });
  fc.assert(
    fc.property(many, (values) => {
      const narrow = bootstrapInterval(values, null, { draws: 499, confidence: 0.8 });
      const wide = bootstrapInterval(values, null, { draws: 499, confidence: 0.99 });
      if (narrow === null || wide === null) return false;
      return (
        wide.low <= narrow.low &&
        narrow.low <= narrow.high &&
        narrow.high <= wide.high &&
        wide.low >= Math.min(...values) - 1e-9 &&
        wide.high <= Math.max(...values) + 1e-9
      );
    }),
    { numRuns: 40 },
  );
});
