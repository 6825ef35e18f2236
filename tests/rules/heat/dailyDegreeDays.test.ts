import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  type Cutoff,
  degreeDays,
  degreeDaysSine,
  degreeDaysTriangle,
} from '../../../rules/heat/index.ts';
import { HOUR, instant } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

const table = truth(
  'heat/dailyDegreeDays.csv',
  ['min', 'max', 'next', 'lower', 'upper', 'tri', 'tri2', 'sine', 'sine2'],
  ['cutoff'],
);

test.for(table)('$min to $max over $lower, $cutoff at $upper', (row) => {
  const { min, max, next, lower, upper } = row;
  const day = { min, max, lower, upper, cutoff: row.cutoff as Cutoff };
  expect(degreeDaysTriangle(day)).toBeCloseTo(row.tri, 4);
  expect(degreeDaysTriangle({ ...day, nextMin: next })).toBeCloseTo(row.tri2, 4);
  expect(degreeDaysSine(day)).toBeCloseTo(row.sine, 4);
  expect(degreeDaysSine({ ...day, nextMin: next })).toBeCloseTo(row.sine2, 4);
});

const temperature = fc.double({ min: -10, max: 45, noNaN: true });
const anyDay = fc
  .tuple(temperature, temperature, fc.double({ min: 0, max: 15, noNaN: true }))
  .map(([a, b, lower]) => ({ min: Math.min(a, b), max: Math.max(a, b), lower }));
const methods = { degreeDaysSine, degreeDaysTriangle };

test.for(Object.entries(methods))(
  '%s lies between nothing and the whole day at its warmest',
  ([, method]) => {
    fc.assert(
      fc.property(anyDay, (day) => {
        const units = method(day);
        return units >= 0 && units <= Math.max(0, day.max - day.lower) + 1e-9;
      }),
    );
  },
);

test.for(Object.entries(methods))('%s: the gentler the cut-off, the more units', ([, method]) => {
  fc.assert(
    fc.property(anyDay, (day) => {
      const [horizontal = 0, intermediate = 0, vertical = 0] = (
        ['horizontal', 'intermediate', 'vertical'] as const
      ).map((cutoff) => method({ ...day, upper: day.lower + 15, cutoff }));
      const none = method(day);
      return (
        none >= horizontal - 1e-9 &&
        horizontal >= intermediate - 1e-9 &&
        horizontal >= vertical - 1e-9
      );
    }),
  );
});

test('the triangle is what exact integration gives of a straight rise and fall', () => {
  fc.assert(
    fc.property(anyDay, ({ min, max, lower }) => {
      const line = [
        [0, min],
        [12, max],
        [24, min],
      ] as const;
      const readings = line.map(([hour, value]) => ({ t: instant(hour * HOUR), value }));
      const rule = { lower, upper: lower + 15 };
      const exact = degreeDays(readings, { ...rule, maxGapMinutes: 1000 }).degreeDays;
      return Math.abs(degreeDaysTriangle({ min, max, ...rule }) - exact) < 1e-9;
    }),
  );
});

test('a day with its minimum above its maximum is refused', () => {
  expect(() => degreeDaysSine({ min: 15, max: 5, lower: 8 })).toThrow(
    'Expected maximum from 15 to 200 °C, got 5',
  );
  expect(() => degreeDaysTriangle({ min: 5, max: 15, lower: 10, upper: 8 })).toThrow(RangeError);
  expect(() => degreeDaysSine({ min: 5, max: 15, lower: 8, nextMin: 20 })).toThrow(RangeError);
});
