import fc from 'fast-check';
import { expect, test } from 'vitest';
import { degreeDays, hoursBelow } from '../../../rules/heat/index.ts';
import { HOUR, instant } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

const table = truth(
  'heat/segments.csv',
  ['lower', 'upper', 'horizontal', 'vertical', 'intermediate'],
  ['readings'],
);
const cutoffs = ['horizontal', 'vertical', 'intermediate'] as const;
const series = (text: string) =>
  text.split(' ').map((pair) => {
    const [hour = Number.NaN, value = Number.NaN] = pair.split(':').map(Number);
    return { t: instant(hour * HOUR), value };
  });

test.for(table)('readings $readings between $lower and $upper °C', (row) => {
  const { lower, upper } = row;
  for (const cutoff of cutoffs) {
    const { degreeDays: units } = degreeDays(series(row.readings), { lower, upper, cutoff });
    expect(Math.abs(24 * units - row[cutoff])).toBeLessThan(2e-5);
  }
});

const anySeries = fc
  .array(fc.double({ min: -10, max: 60, noNaN: true }), { minLength: 2, maxLength: 30 })
  .map((values) => values.map((value, index) => ({ t: instant(index * HOUR), value })));

test('no cut-off ever takes units away below nothing, or adds to the horizontal one', () => {
  fc.assert(
    fc.property(anySeries, (readings) => {
      const units = cutoffs.map(
        (cutoff) => degreeDays(readings, { lower: 8, upper: 28, cutoff }).degreeDays,
      );
      return units.every((each) => each >= -1e-9 && each <= (units[0] ?? 0) + 1e-9);
    }),
  );
});

test('splitting a list at a reading never changes its sums, whatever the cut-off', () => {
  fc.assert(
    fc.property(anySeries, fc.nat(), (readings, where) => {
      const cut = where % readings.length;
      return cutoffs.every((cutoff) => {
        const of = (part: typeof readings) =>
          degreeDays(part, { lower: 8, upper: 28, cutoff }).degreeDays;
        return (
          Math.abs(of(readings.slice(0, cut + 1)) + of(readings.slice(cut)) - of(readings)) < 1e-9
        );
      });
    }),
  );
});

test('a null is unknown time on both its sides, for units and for a dose of cold', () => {
  const values = [20, 20, null, 20, 20];
  const readings = values.map((value, index) => ({ t: instant(index * HOUR), value }));
  const { degreeDays: units, unknownHours } = degreeDays(readings, { lower: 10 });
  expect(units).toBeCloseTo(20 / 24, 12);
  expect(unknownHours).toBe(2);
  expect(hoursBelow(readings, 30)).toEqual({ hours: 2, degreeHours: 20, unknownHours: 2 });
});

test('readings are joined over 90 minutes, and not over 91', () => {
  const apart = (minutes: number) => [
    { t: instant(0), value: 20 },
    { t: instant(minutes * 60_000), value: 20 },
  ];
  expect(degreeDays(apart(90), { lower: 10 }).unknownHours).toBe(0);
  expect(degreeDays(apart(91), { lower: 10 }).unknownHours).toBeCloseTo(91 / 60, 9);
  expect(hoursBelow(apart(91), 30).unknownHours).toBeCloseTo(91 / 60, 9);
});
