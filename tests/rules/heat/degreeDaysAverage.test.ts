import fc from 'fast-check';
import { expect, test } from 'vitest';
import { degreeDaysAverage } from '../../../rules/heat/index.ts';
import { truth } from '../../truth/index.ts';

const table = truth(
  'heat/degreeDaysAverage.csv',
  ['min', 'max', 'lower', 'units'],
  ['upper', 'method'],
);

test.for(table)('$min to $max over $lower, $method, gives $units', (row) => {
  const { min, max, lower } = row;
  const day =
    row.method === 'mean-first'
      ? ({ method: 'mean-first', min, max, lower } as const)
      : ({
          method: 'limits-first',
          min,
          max,
          lower,
          upper: row.upper === 'none' ? undefined : Number(row.upper),
        } as const);
  expect(degreeDaysAverage(day)).toBeCloseTo(row.units, 9);
});

test('taking the limits first never gives less, as long as nothing is capped', () => {
  const degrees = fc.double({ min: -20, max: 45, noNaN: true });
  fc.assert(
    fc.property(degrees, degrees, degrees, (a, b, lower) => {
      const day = { min: Math.min(a, b), max: Math.max(a, b), lower };
      return (
        degreeDaysAverage({ ...day, method: 'limits-first' }) >=
        degreeDaysAverage({ ...day, method: 'mean-first' }) - 1e-9
      );
    }),
  );
});

test('a cap with the mean first has no meaning in the source and is refused', () => {
  const day = { method: 'mean-first', min: 5, max: 15, lower: 8, upper: 30 };
  expect(() => degreeDaysAverage(day as never)).toThrow(
    'Expected no upper threshold with mean-first, got 30',
  );
});

test('an extreme that is not known leaves the day unknown', () => {
  expect(degreeDaysAverage({ method: 'limits-first', min: null, max: 15, lower: 8 })).toBeNull();
});
