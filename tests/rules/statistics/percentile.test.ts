import fc from 'fast-check';
import { median as theirMedian } from 'simple-statistics';
import { expect, test } from 'vitest';
import { median, medianInterval, percentile, ranks } from '../../../rules/statistics/index.ts';

const someValues = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), {
  minLength: 1,
  maxLength: 60,
});

test('the tenth percentile of ten cool-room readings is 2.19', () => {
  // Type 7 of Hyndman & Fan 1996; NumPy's default percentile gives the same.
  const readings = [2.1, 2.4, 2.9, 3.3, 3.8, 4.0, 3.6, 3.1, 2.7, 2.2];
  expect(percentile(readings, 0.1)).toBeCloseTo(2.19, 9);
  expect(percentile([3.9, 4.1, 4.4, 4.0, 3.8, 4.6, 4.9, 5.1, 4.3, 4.2], 0.1)).toBeCloseTo(3.89, 9);
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
