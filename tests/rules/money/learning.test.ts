import fc from 'fast-check';
import { expect, test } from 'vitest';
import { batchesToTell, pickingSpeed } from '../../../rules/money/index.ts';
import { ratioInterval, studentQuantile } from '../../../rules/statistics/index.ts';
import { truth } from '../../truth/index.ts';

// All money, weights and minutes here are invented.
const five = [
  { got: 55, took: 3 },
  { got: 20, took: 2 },
  { got: 70, took: 3.5 },
  { got: 31, took: 2.5 },
  { got: 48, took: 2.8 },
];
const known = ratioInterval(five, 0.8);

test.for(truth('money/batchesToTell.csv', ['wage', 'more']))(
  'at a wage of $wage it takes $more batches more to tell',
  ({ wage, more }) => {
    expect(batchesToTell(known, wage) ?? -1).toBe(more);
  },
);

test('below three batches as many are missing as there are to three, whatever they brought', () => {
  expect(batchesToTell(null, 16)).toBe(3);
  expect(batchesToTell(ratioInterval(five.slice(0, 1), 0.8), 16)).toBe(2);
  expect(batchesToTell(ratioInterval(five.slice(0, 2), 0.8), 16)).toBe(1);
});

test('at just the wage no number of batches tells', () => {
  expect(batchesToTell(known, known?.ratio ?? 0)).toBeNull();
});

test('the nearer the wage, the more batches it takes', () => {
  const away = fc.double({ min: 0.01, max: 20, noNaN: true });
  fc.assert(
    fc.property(away, away, (a, b) => {
      const at = (gap: number) =>
        batchesToTell(known, (known?.ratio ?? 0) + gap) ?? Number.POSITIVE_INFINITY;
      return at(Math.min(a, b)) >= at(Math.max(a, b));
    }),
  );
});

const kilograms = [9, 8, 7.5, 6, 5, 4.2, 3, 2.5, 2];
const minutes = [70, 66, 64, 55, 50, 46, 40, 36, 33];
const walks = [12, 12, 10, 12, 12, 10, 12, 12, 12];
const pickings = kilograms.map((kg, i) => ({
  ...{ kilograms: kg, minutes: minutes[i] ?? 0, walk: walks[i] ?? 0 },
}));

test.for(truth('money/pickingSpeed.csv', ['pickings', 'minutes_per_kg', 'low', 'high', 'counted']))(
  'after $pickings pickings a kilogram takes $minutes_per_kg min',
  (row) => {
    const found = pickingSpeed(pickings.slice(0, row.pickings));
    expect(found?.pickings).toBe(row.counted);
    expect(Math.abs((found?.minutesPerKilogram ?? 0) - row.minutes_per_kg)).toBeLessThan(5e-7);
    expect(Math.abs((found?.low ?? 0) - row.low)).toBeLessThan(5e-7);
    expect(Math.abs((found?.high ?? 0) - row.high)).toBeLessThan(5e-7);
  },
);

test('three pickings tell no speed, nor do four that brought nothing', () => {
  expect(pickingSpeed(pickings.slice(0, 3))).toBeNull();
  const nothing = { kilograms: 0, minutes: 20, walk: 10 };
  expect(pickingSpeed([nothing, nothing, nothing, nothing])).toBeNull();
});

test('a slowest speed is above no speed, and no picking takes less than no time', () => {
  const odd = [1, 30, 1, 1].map((kg) => ({ kilograms: kg, minutes: kg === 30 ? 10 : 50, walk: 0 }));
  expect(pickingSpeed(odd)?.low).toBe(0);
});

test.for<[string, () => unknown]>([
  ['picked weight', () => pickingSpeed([{ kilograms: -1, minutes: 1, walk: 0 }])],
  ['picked weight', () => pickingSpeed([{ kilograms: 1.01e6, minutes: 1, walk: 0 }])],
  ['minutes of a picking', () => pickingSpeed([{ kilograms: 1, minutes: -1, walk: 0 }])],
  ['minutes of a picking', () => pickingSpeed([{ kilograms: 1, minutes: 1.01e5, walk: 0 }])],
  ['walk from 0 to 5 min', () => pickingSpeed([{ kilograms: 1, minutes: 5, walk: 6 }])],
  ['confidence', () => pickingSpeed(pickings, 0.4)],
  ['wage', () => batchesToTell(known, -1)],
  ['confidence from 0.5 to 0.99', () => batchesToTell(known, 1, 0.995)],
  ['confidence from 0.5 to 0.99', () => batchesToTell(known, 1, 0.49)],
])('refuses a %s that cannot be', ([what, call]) => {
  expect(call).toThrow(`Expected ${what}`);
});

// Sugar (lb) and weight (lb) of ten oranges: the source is in the table.
const sugar = [0.021, 0.03, 0.025, 0.022, 0.033, 0.027, 0.019, 0.021, 0.023, 0.025];
const weight = [0.4, 0.48, 0.43, 0.42, 0.5, 0.46, 0.39, 0.41, 0.42, 0.44];

test.for(truth('statistics/ratioOranges.csv', ['load', 'sugar', 'bound']))(
  'a load of $load lb of oranges holds $sugar lb of sugar, give or take $bound',
  (row) => {
    const pairs = sugar.map((got, i) => ({ got, took: weight[i] ?? 0 }));
    const found = ratioInterval(pairs, 0.95);
    expect(Math.abs(row.load * (found?.ratio ?? 0) - row.sugar)).toBeLessThan(0.005);
    // The book takes two standard errors; ours takes Student's t for ten.
    const error = ((found?.high ?? 0) - (found?.ratio ?? 0)) / studentQuantile(0.975, 9);
    expect(Math.abs(2 * row.load * error - row.bound)).toBeLessThan(0.05);
  },
);
