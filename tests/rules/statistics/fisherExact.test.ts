import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fisherExact } from '../../../rules/statistics/index.ts';
import { truth } from '../../truth/index.ts';

test.for(truth('statistics/fisherExact.csv', ['a', 'b', 'c', 'd', 'p', 'odds']))(
  '[$a $b; $c $d] is this uneven by chance $p of the time',
  ({ a, b, c, d, p, odds }) => {
    const result = fisherExact(a, b, c, d);
    expect(Math.abs(result.p - p)).toBeLessThan(6e-7);
    expect(result.oddsRatio).toBe(odds);
  },
);

test('an empty row or column says nothing', () => {
  expect(fisherExact(0, 0, 3, 4)).toEqual({ p: 1, oddsRatio: null });
  expect(fisherExact(2, 0, 3, 0)).toEqual({ p: 1, oddsRatio: null });
});

test('the chance is above 0, at most 1, and the same for the table turned either way', () => {
  const count = fc.nat(30);
  fc.assert(
    fc.property(count, count, count, count, (a, b, c, d) => {
      const { p } = fisherExact(a, b, c, d);
      const turned = fisherExact(a, c, b, d).p;
      const swapped = fisherExact(c, d, a, b).p;
      return p > 0 && p <= 1 && Math.abs(p - turned) < 1e-9 && Math.abs(p - swapped) < 1e-9;
    }),
  );
});

test('lots are counted in whole numbers', () => {
  expect(() => fisherExact(-1, 2, 3, 4)).toThrow('Expected lots from 0');
  expect(() => fisherExact(1.5, 2, 3, 4)).toThrow('Expected whole lots');
});
