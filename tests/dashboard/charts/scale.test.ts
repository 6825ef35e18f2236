import fc from 'fast-check';
import { expect, test } from 'vitest';
import { extent, scale, ticks } from '../../../dashboard/charts/scale.ts';

const number = fc.double({ min: -50, max: 50, noNaN: true });

test('the ends of a domain land on the ends of the range', () => {
  const y = scale([-5, 25], [100, 0]);
  expect([y(-5), y(10), y(25)]).toEqual([100, 50, 0]);
});

test('a domain without width lands in the middle instead of nowhere', () => {
  expect(scale([3, 3], [0, 100])(3)).toBe(50);
});

test('ticks are round, lie inside and are evenly spaced', () => {
  expect(ticks(-5, 25, 3)).toEqual([0, 10, 20]);
  expect(ticks(2, 6, 4)).toEqual([2, 3, 4, 5, 6]);
  expect(ticks(0, 0.5, 5)).toEqual([0, 0.1, 0.2, 0.3, 0.4, 0.5]);
  expect(ticks(5, 5, 3)).toEqual([]);
});

test('ticks are never more than asked for and one', () => {
  fc.assert(
    fc.property(number, fc.double({ min: 0.5, max: 80, noNaN: true }), (from, width) => {
      const found = ticks(from, from + width, 4);
      return (
        found.length <= 5 &&
        found.every((tick) => tick >= from - 1e-6 && tick <= from + width + 1e-6)
      );
    }),
  );
});

test('an extent takes no notice of what is not known', () => {
  expect(extent([null, 3, null, -1], 1)).toEqual([-2, 4]);
  expect(extent([null], 1)).toBeNull();
});
