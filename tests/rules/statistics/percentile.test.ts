import fc from 'fast-check';
import { median as theirMedian } from 'simple-statistics';
import { expect, test } from 'vitest';
import { median, medianInterval, percentile, ranks } from '../../../rules/statistics/index.ts';
import { truth } from '../../truth/index.ts';

const someValues = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), {
  minLength: 1,
  maxLength: 60,
});

test.for(truth('statistics/percentile.csv', ['share', 'percentile'], ['values']))(
  'the share $share of $values lies below $percentile',
  (row) => {
    expect(percentile(row.values.split(' ').map(Number), row.share)).toBeCloseTo(row.percentile, 9);
  },
);

test('a value that is not known is refused, and an unknown share leaves the answer unknown', () => {
  expect(() => percentile([1, null as unknown as number], 0.5)).toThrow('got null');
  expect(percentile([1, 2], null)).toBeNull();
});

test('the median agrees with simple-statistics', () => {
  fc.assert(
    fc.property(someValues, (values) => Math.abs(median(values) - theirMedian(values)) < 1e-9),
  );
});

test('a percentile stays between the least and the greatest, and rises with the share', () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  fc.assert(
    fc.property(someValues, share, share, (values, a, b) => {
      const low = percentile(values, Math.min(a, b));
      const high = percentile(values, Math.max(a, b));
      const hair = 1e-9;
      return (
        Math.min(...values) <= low + hair &&
        low <= high + hair &&
        high <= Math.max(...values) + hair
      );
    }),
  );
});

test('the list is left in its order', () => {
  const values = [3, 1, 2];
  median(values);
  expect(values).toEqual([3, 1, 2]);
});

test('nothing has no percentile', () => {
  expect(() => percentile([], 0.5)).toThrow('Expected number of values from 1');
  expect(() => percentile([1], 1.5)).toThrow(RangeError);
});

test('the usual step of a series is not moved by one gap', () => {
  const t = [0, 5, 10, 15, 400, 405, 410].map((minute) => ({ t: minute * 60_000 }));
  expect(medianInterval(t)).toBe(300_000);
  expect(medianInterval([{ t: 0 }, { t: 10 }, { t: 40 }])).toBe(20); // half-way between 10 and 30
  expect(medianInterval([{ t: 1 }])).toBeNull();
  expect(medianInterval([])).toBeNull();
});

test('equal values share the middle of their ranks', () => {
  expect(ranks([10, 20, 20, 30])).toEqual([1, 2.5, 2.5, 4]);
  expect(ranks([5, 5, 5])).toEqual([2, 2, 2]);
});
