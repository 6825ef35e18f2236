import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  benjaminiHochberg,
  chanceOfFalseFind,
  enoughToCompare,
  fisherExact,
  fisherExactOneSided,
  leastFisherP,
  newcombeDifference,
} from '../../../rules/statistics/index.ts';
import { truth } from '../../truth/index.ts';

const fifteen = truth('statistics/benjaminiHochberg.csv', ['p', 'q']);

test('of fifteen comparisons four are kept at 0.05', () => {
  const q = benjaminiHochberg(fifteen.map(({ p }) => p));
  for (const [index, row] of fifteen.entries()) expect(q[index]).toBeCloseTo(row.q, 7);
  expect(q.filter((each) => each <= 0.05)).toHaveLength(4);
});

test('the order in which comparisons are given changes none of them', () => {
  const p = fifteen.map((row) => row.p);
  expect(benjaminiHochberg([...p].reverse())).toEqual(benjaminiHochberg(p).reverse());
});

test('a rate is never below its chance, never above 1, and keeps the order', () => {
  const chances = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 30 });
  fc.assert(
    fc.property(chances, (list) => {
      const q = benjaminiHochberg(list);
      const inOrder = list.map((p, index) => [p, q[index] ?? 9] as const).sort(([a], [b]) => a - b);
      return inOrder.every(
        ([p, each], index) =>
          each >= p - 1e-12 && each <= 1 && each >= (inOrder[index - 1]?.[1] ?? 0) - 1e-12,
      );
    }),
  );
  expect(() => benjaminiHochberg([0.1, null as unknown as number])).toThrow('got NaN');
});

test('twelve useless factors give a find in 46 of 100 cases', () => {
  expect(chanceOfFalseFind(12)).toBeCloseTo(0.4596399, 7); // 1 - 0.95^12, by hand
  expect(chanceOfFalseFind(0)).toBe(0);
  expect(chanceOfFalseFind(null)).toBeNull();
});

test.for(truth('statistics/fisherOneSided.csv', ['a', 'b', 'c', 'd', 'more', 'fewer']))(
  '[$a $b; $c $d] one-sided: $more and $fewer',
  ({ a, b, c, d, more, fewer }) => {
    expect(fisherExactOneSided(a, b, c, d)).toBeCloseTo(more, 7);
    expect(fisherExactOneSided(a, b, c, d, 'fewer')).toBeCloseTo(fewer, 7);
  },
);

test('the two sides share only the table itself', () => {
  const count = fc.nat(20);
  fc.assert(
    fc.property(count, count, count, count, (a, b, c, d) => {
      const both = fisherExactOneSided(a, b, c, d) + fisherExactOneSided(a, b, c, d, 'fewer');
      return both >= 1 - 1e-9 && both <= 2 + 1e-9;
    }),
  );
  expect(fisherExactOneSided(3, null, 1, 2)).toBeNull();
});

test.for(truth('statistics/leastFisher.csv', ['first', 'second', 'p']))(
  '$first lost against $second kept cannot have a chance below $p',
  ({ first, second, p }) => {
    expect(leastFisherP(first, second)).toBeCloseTo(p, 7);
    expect(fisherExact(first, 0, 0, second).p).toBeCloseTo(p, 7);
  },
);

test('six lots with three in each group are enough, fewer are not', () => {
  expect(enoughToCompare(3, 3)).toBe(true);
  expect(enoughToCompare(2, 9)).toBe(false);
  expect(enoughToCompare(9, 2)).toBe(false);
  expect(enoughToCompare(3, 2)).toBe(false);
  expect(enoughToCompare(null, 9)).toBeNull();
});

test.for(
  truth('statistics/newcombe.csv', [
    'successes1',
    'n1',
    'successes2',
    'n2',
    'difference',
    'low',
    'high',
  ]),
)('$successes1/$n1 less $successes2/$n2 is $difference, from $low to $high', (row) => {
  const result = newcombeDifference(row.successes1, row.n1, row.successes2, row.n2);
  expect(result.difference).toBeCloseTo(row.difference, 6);
  expect(result.low).toBeCloseTo(row.low, 5);
  expect(result.high).toBeCloseTo(row.high, 5);
});

test('the interval of a difference holds it, inside -1 to 1, and turns with the groups', () => {
  const share = fc.tuple(fc.nat(30), fc.nat(30)).filter(([lost, kept]) => lost + kept > 0);
  fc.assert(
    fc.property(share, share, ([a, b], [c, d]) => {
      const one = newcombeDifference(a, a + b, c, c + d);
      const other = newcombeDifference(c, c + d, a, a + b);
      return (
        one.low >= -1 &&
        one.low <= one.difference + 1e-12 &&
        one.difference <= one.high + 1e-12 &&
        one.high <= 1 &&
        Math.abs(one.low + other.high) < 1e-9
      );
    }),
  );
  expect(() => newcombeDifference(0, 0, 1, 2)).toThrow('Expected trials from 1');
});
