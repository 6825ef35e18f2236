import fc from 'fast-check';
import { linearRegression, linearRegressionLine, rSquared } from 'simple-statistics';
import { expect, test } from 'vitest';
import { orUnknownField } from '../../../rules/orUnknownField.ts';
import { straightLine } from '../../../rules/statistics/index.ts';

test('five days of energy over warmth: slope 0.23, intercept 1.58', () => {
  // SciPy 1.17 (linregress) and NumPy for the residual spread.
  const line = straightLine([8, 10, 12, 14, 16], [3.4, 3.9, 4.3, 4.9, 5.2]);
  expect(line?.slope).toBeCloseTo(0.23, 9);
  expect(line?.intercept).toBeCloseTo(1.58, 9);
  expect(line?.slopeError).toBeCloseTo(0.011547005, 8);
  expect(line?.residualSd).toBeCloseTo(0.07302967, 7);
  expect(line?.r2).toBeCloseTo(0.9962405881956831 ** 2, 9);
});

test('any line agrees with simple-statistics', () => {
  const point = fc.tuple(fc.integer({ min: -50, max: 50 }), fc.integer({ min: -50, max: 50 }));
  fc.assert(
    fc.property(fc.array(point, { minLength: 3, maxLength: 20 }), (points) => {
      const line = straightLine(
        points.map(([x]) => x),
        points.map(([, y]) => y),
      );
      if (line === null) return new Set(points.map(([x]) => x)).size === 1;
      const theirs = linearRegression(points);
      const close = (a: number, b: number) => Math.abs(a - b) < 1e-8 * Math.max(1, Math.abs(b));
      const flat = new Set(points.map(([, y]) => y)).size === 1;
      return (
        close(line.slope, theirs.m) &&
        close(line.intercept, theirs.b) &&
        (flat ? line.r2 === 0 : close(line.r2, rSquared(points, linearRegressionLine(theirs))))
      );
    }),
  );
});

test('two points leave nothing to judge a line by, and one time has none', () => {
  expect(straightLine([0, 1], [1, 3])).toEqual({
    n: 2,
    slope: 2,
    intercept: 1,
    slopeError: null,
    residualSd: null,
    r2: 1,
  });
  expect(straightLine([1, 1], [1, 3])).toBeNull();
  expect(() => straightLine([1], [1])).toThrow('Expected points from 2');
});

test('an unknown among named values makes the answer unknown', () => {
  const area = orUnknownField(
    ({ length, width }: { length: number; width: number }) => length * width,
  );
  expect(area({ length: 2, width: 3 })).toBe(6);
  expect(area({ length: 2, width: null })).toBeNull();
});
