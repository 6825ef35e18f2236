import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  type BatchMoney,
  batchEarnings,
  breakEvenPrice,
  pickOn,
  worthItsHours,
} from '../../../rules/money/index.ts';
import { truth } from '../../truth/index.ts';

// All money here is invented.
const batch: BatchMoney = {
  trays: 20,
  days: 15,
  kilograms: 7,
  lost: 0.5,
  price: 30,
  seed: 18,
  other: 12,
  minutes: 180,
};

test('a batch of 20 trays: 165 earned, 8.25 a tray, 0.55 a tray and day, 55 an hour', () => {
  // By hand: 6.5 kg x 30 = 195, less 18 and 12 is 165; over 20, over 300, over 3 h.
  expect(batchEarnings(batch)).toEqual({
    earned: 165,
    trayDays: 300,
    hours: 3,
    perTray: 8.25,
    perTrayDay: 0.55,
    perHour: 55,
  });
});

test('a weight nobody wrote down is not zero, and no work is no hourly figure', () => {
  expect(batchEarnings({ ...batch, kilograms: null })).toBeNull();
  expect(batchEarnings({ ...batch, minutes: 0 }).perHour).toBeNull();
  expect(batchEarnings({ ...batch, trays: 0 })).toMatchObject({ perTray: null, perTrayDay: null });
  expect(() => batchEarnings({ ...batch, lost: 8 })).toThrow('Expected lost weight from 0 to 7');
  for (const field of ['trays', 'days', 'price', 'seed', 'other', 'minutes'] as const)
    expect(() => batchEarnings({ ...batch, [field]: -1 })).toThrow('from 0 to');
});

test('at its break-even price a batch earns exactly the wage', () => {
  const amount = fc.double({ min: 0, max: 500, noNaN: true });
  const some = fc.record({
    kilograms: fc.double({ min: 1, max: 100, noNaN: true }),
    seed: amount,
    other: amount,
    minutes: fc.double({ min: 1, max: 5000, noNaN: true }),
    wage: fc.double({ min: 0, max: 100, noNaN: true }),
  });
  fc.assert(
    fc.property(some, ({ wage, ...rest }) => {
      const lost = rest.kilograms / 4;
      const price = breakEvenPrice({ ...rest, lost, wage }) ?? 0;
      const { perHour } = batchEarnings({ ...rest, lost, price, trays: 1, days: 1 });
      expect(perHour ?? -1).toBeCloseTo(wage, 6);
    }),
  );
  expect(breakEvenPrice({ ...batch, lost: 7, wage: 16 })).toBeNull();
  // By hand: (18 + 12 + 3 x 16) / 6.5 = 12.
  expect(breakEvenPrice({ ...batch, wage: 16 })).toBe(12);
  for (const field of ['kilograms', 'lost', 'seed', 'other', 'minutes'] as const)
    expect(() => breakEvenPrice({ ...batch, wage: 16, [field]: -1 })).toThrow('from 0 to');
  expect(() => breakEvenPrice({ ...batch, wage: -1 })).toThrow('Expected wage');
});

const earning = (perHour: number, hours = 3) =>
  batchEarnings({
    ...batch,
    minutes: 60 * hours,
    lost: 0,
    kilograms: 1,
    seed: 0,
    other: 0,
    price: perHour * hours,
  });

test('a crop pays, does not pay, or nobody can tell', () => {
  const wage = 16;
  expect(
    worthItsHours(
      [30, 34, 29, 33].map((each) => earning(each)),
      wage,
    ).verdict,
  ).toBe('pays');
  expect(
    worthItsHours(
      [7, 9, 6, 8].map((each) => earning(each)),
      wage,
    ).verdict,
  ).toBe('does-not-pay');
  expect(
    worthItsHours(
      [4, 30, 12, 22].map((each) => earning(each)),
      wage,
    ).verdict,
  ).toBe('cannot-tell');
});

test('two batches decide nothing, however well they earned; one with an unknown is left out', () => {
  const two = worthItsHours([earning(90), earning(95), null], 16);
  expect(two).toMatchObject({ verdict: 'cannot-tell', counted: 2, leftOut: 1 });
  expect(two.perHour?.ratio).toBeCloseTo(92.5, 9);
  expect(worthItsHours([], 16)).toEqual({
    verdict: 'cannot-tell',
    perHour: null,
    perTrayDay: null,
    counted: 0,
    leftOut: 0,
  });
  expect(() => worthItsHours([], -1)).toThrow('Expected wage');
});

test('a higher wage never makes a crop pay that did not', () => {
  const order = ['pays', 'cannot-tell', 'does-not-pay'];
  const batches = fc.array(fc.double({ min: 0, max: 60, noNaN: true }), { maxLength: 8 });
  fc.assert(
    fc.property(batches, fc.integer({ min: 0, max: 60 }), (each, wage) => {
      const all = each.map((perHour) => earning(perHour));
      const now = order.indexOf(worthItsHours(all, wage).verdict);
      expect(order.indexOf(worthItsHours(all, wage + 5).verdict)).toBeGreaterThanOrEqual(now);
    }),
  );
});

const minutes = [90, 100, 90, 85, 75, 70];
const kilograms = [9, 10, 8, 6.5, 4, 2.5];
const pickings = [0, 3, 7, 10, 14, 18].map((day, index) => ({
  day,
  kilograms: kilograms[index] ?? 0,
  minutes: minutes[index] ?? 0,
}));

test.for(truth('money/pickOn.csv', ['day', 'per_hour', 'low', 'high']))(
  'the picking on day $day brings about $per_hour an hour, $low to $high',
  ({ day, per_hour, low, high }) => {
    const found = pickOn(pickings, { nextDay: day, perKilogram: 7, wage: 16 });
    expect(found.perHour).toBeCloseTo(per_hour, 6);
    expect(found.low).toBeCloseTo(low, 6);
    expect(found.high).toBeCloseTo(high, 6);
  },
);

test('a patch that slows down is left when even its best guess is below the wage', () => {
  const ask = (nextDay: number, wage: number) =>
    pickOn(pickings, { nextDay, perKilogram: 7, wage }).verdict;
  expect(ask(21, 4)).toBe('pays');
  expect(ask(21, 14)).toBe('cannot-tell');
  expect(ask(25, 30)).toBe('does-not-pay');
});

test('three pickings, or several on one day, say nothing of the next', () => {
  const asked = { nextDay: 20, perKilogram: 7, wage: 16 };
  const nothing = { verdict: 'cannot-tell', perHour: null, low: null, high: null };
  expect(pickOn(pickings.slice(0, 3), asked)).toEqual({ ...nothing, breakEvenSpeed: 16 / 7 });
  const oneDay = pickings.map((each) => ({ ...each, day: 4 }));
  expect(pickOn(oneDay, asked)).toMatchObject(nothing);
  expect(pickOn([], { ...asked, perKilogram: 0 })).toEqual({ ...nothing, breakEvenSpeed: null });
});

test('only the newest eight pickings count', () => {
  const flush = [1, 2, 3].map((day) => ({ day, kilograms: 40, minutes: 60 }));
  const later = pickings.map((each) => ({ ...each, day: each.day + 10 }));
  const eight = [
    { day: 5, kilograms: 9, minutes: 80 },
    { day: 7, kilograms: 9, minutes: 90 },
    ...later,
  ];
  const asked = { nextDay: 30, perKilogram: 7, wage: 16 };
  expect(pickOn([...flush, ...eight], asked)).toEqual(pickOn(eight, asked));
});

test('a picking that cannot be is refused', () => {
  const asked = { nextDay: 20, perKilogram: 7, wage: 16 };
  const with_ = (change: object) =>
    [{ ...pickings[0], ...change }, ...pickings.slice(1)] as typeof pickings;
  expect(() => pickOn(with_({ day: 5 }), asked)).toThrow('Expected day of a picking from 5');
  expect(() => pickOn(with_({ kilograms: -1 }), asked)).toThrow('Expected picked weight from 0');
  expect(() => pickOn(with_({ minutes: 0 }), asked)).toThrow('Expected minutes of a picking');
  expect(() => pickOn(pickings, { ...asked, nextDay: 17 })).toThrow(
    'Expected day of the next picking from 18',
  );
  expect(() => pickOn(pickings, { ...asked, wage: -1 })).toThrow('Expected wage');
  expect(() => pickOn(pickings, { ...asked, perKilogram: -1 })).toThrow(
    'Expected what a kilogram leaves',
  );
});
