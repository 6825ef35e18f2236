import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clip, fanPath, linePath } from '../../../dashboard/charts/paths.ts';

const same = (value: number) => value;

test('a gap breaks the line', () => {
  expect(linePath([0, 1, 2, 3, 4], [5, 6, null, 7, 8], same, same)).toBe('M0 5L1 6M3 7L4 8');
});

test('a reading alone between two gaps is a dot, not nothing', () => {
  expect(linePath([0, 1, 2], [null, 6, null], same, same)).toBe('M1 6h0');
  expect(linePath([0, 1], [null, 6], same, same)).toBe('M1 6h0');
});

test('nothing known draws nothing', () => {
  expect(linePath([0, 1], [null, null], same, same)).toBe('');
  expect(linePath([], [], same, same)).toBe('');
});

test('a line never joins two readings across a gap', () => {
  const values = fc.array(fc.option(fc.integer({ min: 0, max: 9 }), { nil: null }), {
    maxLength: 40,
  });
  fc.assert(
    fc.property(values, (column) => {
      const path = linePath(
        column.map((_, i) => i),
        column,
        same,
        same,
      );
      const known = column.filter((value) => value !== null).length;
      const stretches = column.filter(
        (v, i) => v !== null && (column[i - 1] ?? null) === null,
      ).length;
      const moves = path.split('M').length - 1;
      const joins = path.split('L').length - 1;
      return moves === stretches && joins === known - stretches;
    }),
  );
});

test('a fan goes out along its high edge and back along its low one', () => {
  const fan = [
    { t: 0, low: 1, high: 2 },
    { t: 1, low: 0, high: 3 },
  ];
  expect(fanPath(fan, same, same)).toBe('M0 2L1 3L1 0L0 1Z');
  expect(fanPath(fan.slice(1), same, same)).toBe('');
});

test('only the part of a spell inside the window is drawn', () => {
  expect(clip({ from: -5, to: 5 }, { from: 0, to: 10 })).toEqual({ from: 0, to: 5 });
  expect(clip({ from: 11, to: 15 }, { from: 0, to: 10 })).toBeNull();
});
