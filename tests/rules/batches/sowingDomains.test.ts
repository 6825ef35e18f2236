import { expect, test } from 'vitest';
import { mixParts, sowingPlan, traysFor } from '../../../rules/batches/index.ts';

// Each call is given a bound, which it takes, and then a number beyond it.
test.for<[string, (value: number) => unknown, at: number, beyond: number]>([
  ['wanted weight from 0 to 100000 kg', (value) => traysFor(value, [1]), 1e5, 1.01e5],
  ['weight of a tray from 0.001 to 1000 kg', (value) => traysFor(1, [value]), 0.001, 0.00099],
  ['weight of a tray from 0.001 to 1000 kg', (value) => traysFor(1, [value]), 1000, 1001],
  ['wanted chance from 0.5 to 0.99', (value) => traysFor(1, [1], value), 0.5, 0.49],
  ['wanted chance from 0.5 to 0.99', (value) => traysFor(1, [1], value), 0.99, 0.991],
  [
    'weight of the mix from 0 to 100000 kg',
    (value) => mixParts(value, [{ crop: 'pea', share: 1 }]),
    1e5,
    1.01e5,
  ],
  [
    'sum of the shares from 0.98 to 1.02',
    (value) =>
      mixParts(1, [
        { crop: 'pea', share: 0.5 },
        { crop: 'radish', share: value },
      ]),
    0.48,
    0.479,
  ],
  [
    'day of delivery from 0 to 366 d',
    (delivery) => sowingPlan([{ delivery, crop: 'pea', kilograms: 1 }], [], []),
    366,
    367,
  ],
  [
    'wanted weight from 0 to 100000 kg',
    (kilograms) => sowingPlan([{ delivery: 1, crop: 'pea', kilograms }], [], []),
    1e5,
    1.01e5,
  ],
])('%s', ([said, call, at, beyond]) => {
  expect(() => call(at)).not.toThrow();
  expect(() => call(beyond)).toThrow(`Expected ${said}`);
});

test('without another wish eight in ten batches reach the weight', () => {
  const perTray = [0.34, 0.41, 0.29, 0.37, 0.36];
  expect(traysFor(700, perTray)).toBe(traysFor(700, perTray, 0.8));
  expect(traysFor(700, perTray)).not.toBe(traysFor(700, perTray, 0.805));
});

test('sown late it is tried from an even chance on', () => {
  // Three alike batches: half of new ones are ready at their mean, by symmetry.
  const crop = { id: 'pea', pastDegreeDays: [95, 100, 105], perTray: [1], keepDays: 3 };
  const plan = (units: number) =>
    sowingPlan(
      [{ delivery: 10, crop: 'pea', kilograms: 1 }],
      [crop],
      [{ id: 'house', free: Array(20).fill(5), unitsOf: () => Array(20).fill(units) }],
    );
  expect(plan(10.0001).sowings).toHaveLength(1);
  expect(plan(9.999).shortfalls[0]?.reason).toBe('too-late');
});
