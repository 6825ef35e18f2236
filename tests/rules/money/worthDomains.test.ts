import { expect, test } from 'vitest';
import {
  type BatchMoney,
  batchEarnings,
  breakEvenPrice,
  pickOn,
  worthItsHours,
} from '../../../rules/money/index.ts';

// Invented.
const batch: BatchMoney = {
  trays: 1,
  days: 1,
  kilograms: 1,
  lost: 0,
  price: 1,
  seed: 0,
  other: 0,
  minutes: 60,
};
const season = (change: object = {}) =>
  [1, 2, 3, 4].map((day) => ({ day, kilograms: 5, minutes: 60, ...change }));
const asked = { nextDay: 5, perKilogram: 1, wage: 1 };
const one = batchEarnings(batch);

// Each call is given a bound, which it takes, and then a number beyond it.
test.for<[string, (value: number) => unknown, at: number, beyond: number]>([
  ['trays from 0 to 1000000', (trays) => batchEarnings({ ...batch, trays }), 1e6, 1.01e6],
  ['days from 0 to 3650 d', (days) => batchEarnings({ ...batch, days }), 3650, 3686],
  [
    'cut weight from 0 to 10000000 kg',
    (kilograms) => batchEarnings({ ...batch, kilograms }),
    1e7,
    1.01e7,
  ],
  ['labour from 0 to 10000000 min', (minutes) => batchEarnings({ ...batch, minutes }), 1e7, 1.01e7],
  [
    'cut weight from 0 to 10000000 kg',
    (kilograms) => breakEvenPrice({ ...batch, kilograms, wage: 1 }),
    1e7,
    1.01e7,
  ],
  [
    'labour from 0 to 10000000 min',
    (minutes) => breakEvenPrice({ ...batch, minutes, wage: 1 }),
    1e7,
    1.01e7,
  ],
  ['confidence from 0.5 to 0.99', (value) => worthItsHours([one], 1, value), 0.5, 0.49],
  ['confidence from 0.5 to 0.99', (value) => worthItsHours([one], 1, value), 0.99, 0.991],
  ['confidence from 0.5 to 0.99', (value) => pickOn(season(), asked, value), 0.5, 0.49],
  ['confidence from 0.5 to 0.99', (value) => pickOn(season(), asked, value), 0.99, 0.991],
  [
    'picked weight from 0 to 1000000 kg',
    (kilograms) => pickOn(season({ kilograms }), asked),
    1e6,
    1.01e6,
  ],
  [
    'minutes of a picking from 5e-324 to 100000 min',
    (minutes) => pickOn(season({ minutes }), asked),
    1e5,
    1.01e5,
  ],
  [
    'day of a picking from 0 to 3650 d',
    (day) => pickOn([{ day, kilograms: 1, minutes: 1 }], { ...asked, nextDay: 3650 }),
    3650,
    3686,
  ],
  [
    'day of the next picking from 4 to 3650 d',
    (nextDay) => pickOn(season(), { ...asked, nextDay }),
    3650,
    3686,
  ],
])('%s', ([said, call, at, beyond]) => {
  expect(() => call(at)).not.toThrow();
  expect(() => call(beyond)).toThrow(`Expected ${said}`);
});

test('eight in ten is how sure it has to be, when nothing else is said', () => {
  const batches = [9, 12, 16, 13].map((price) => batchEarnings({ ...batch, price }));
  expect(worthItsHours(batches, 10)).toEqual(worthItsHours(batches, 10, 0.8));
  expect(worthItsHours(batches, 10)).not.toEqual(worthItsHours(batches, 10, 0.81));
  const pickings = [6, 5, 5.5, 4].map((kilograms, day) => ({ day, kilograms, minutes: 60 }));
  expect(pickOn(pickings, asked)).toEqual(pickOn(pickings, asked, 0.8));
  expect(pickOn(pickings, asked)).not.toEqual(pickOn(pickings, asked, 0.81));
});

test('three batches may decide, and four pickings', () => {
  const rich = batchEarnings({ ...batch, price: 50 });
  expect(worthItsHours([rich, rich, rich], 16).verdict).toBe('pays');
  expect(worthItsHours([rich, rich], 16).verdict).toBe('cannot-tell');
  expect(pickOn(season(), asked).verdict).toBe('pays');
  expect(pickOn(season().slice(1), asked).verdict).toBe('cannot-tell');
});
