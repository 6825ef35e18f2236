import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  mixParts,
  type PlannedCrop,
  type PlannedPlace,
  sowingPlan,
  traysFor,
} from '../../../rules/batches/index.ts';
import { truth } from '../../truth/index.ts';

const perTray = [0.34, 0.41, 0.29, 0.37, 0.36];

test.for(truth('batches/traysFor.csv', ['chance', 'trays']))(
  'with a chance of $chance, 7 kg are $trays trays',
  ({ chance, trays }) => {
    expect(traysFor(7, perTray, chance)).toBe(trays);
  },
);

test('one figure of the grower, or two batches, are taken as they are', () => {
  expect(traysFor(7, [0.35])).toBe(20);
  expect(traysFor(7.01, [0.35])).toBe(21);
  expect(traysFor(7, [0.3, 0.4])).toBe(20);
  expect(traysFor(0, [0.35])).toBe(0);
});

test('wildly different batches ask for twice the trays of the mean, never more', () => {
  expect(traysFor(8, [0.05, 0.4, 0.75], 0.99)).toBe(40);
});

test('weights and chances that cannot be are refused', () => {
  expect(() => traysFor(-1, [0.3])).toThrow('Expected wanted weight from 0');
  expect(() => traysFor(1, [])).toThrow('Expected number of past batches from 1');
  expect(() => traysFor(1, [0])).toThrow('Expected weight of a tray from 0.001');
  expect(() => traysFor(1, [0.3], 0.4)).toThrow('Expected wanted chance from 0.5');
});

test('a mix is its parts by weight, also when thirds are written roughly', () => {
  expect(
    mixParts(6, [
      { crop: 'lettuce', share: 0.5 },
      { crop: 'radish', share: 0.5 },
    ]),
  ).toEqual([
    { crop: 'lettuce', kilograms: 3 },
    { crop: 'radish', kilograms: 3 },
  ]);
  const thirds = ['lettuce', 'radish', 'pea'].map((crop) => ({ crop, share: 0.33 }));
  for (const { kilograms } of mixParts(6, thirds)) expect(kilograms).toBeCloseTo(2, 12);
  expect(() => mixParts(6, [{ crop: 'lettuce', share: 0.5 }])).toThrow(
    'Expected sum of the shares from 0.98 to 1.02',
  );
  expect(() => mixParts(-1, thirds)).toThrow('Expected weight of the mix');
  expect(() => mixParts(1, [{ crop: 'pea', share: 1.2 }])).toThrow('Expected share of a crop');
});

// Six batches whose 0.9 target is 156.83 units (tests/truth/batches/sowingDay.csv).
const basil: PlannedCrop = {
  id: 'basil',
  pastDegreeDays: [142, 151, 138, 147, 155, 149],
  perTray: [0.35],
  keepDays: 3,
};
const place = (id: string, room: number, unitsADay: number, days = 60): PlannedPlace => ({
  id,
  free: Array(days).fill(room),
  unitsOf: () => Array(days).fill(unitsADay),
});
const want = (delivery: number, kilograms = 7) => ({ delivery, crop: 'basil', kilograms });

test('trays are sown as many days before the delivery as the place is warm', () => {
  // By hand: 156.83 units at 10 a day are 16 days, at 8 a day 20.
  const { sowings, shortfalls } = sowingPlan(
    [want(30)],
    [basil],
    [place('cold', 40, 8), place('warm', 40, 10)],
  );
  expect(sowings).toEqual([
    expect.objectContaining({ place: 'warm', day: 14, trays: 20, kilograms: 7 }),
  ]);
  expect(shortfalls).toEqual([]);
});

test('what does not fit goes to the next place, and the rest is said', () => {
  const places = [place('warm', 8, 10), place('cold', 8, 8)];
  const { sowings, shortfalls } = sowingPlan([want(30)], [basil], places);
  expect(sowings.map(({ place, day, trays }) => [place, day, trays])).toEqual([
    ['cold', 10, 8],
    ['warm', 14, 8],
  ]);
  expect(shortfalls).toEqual([expect.objectContaining({ trays: 4, reason: 'no-room' })]);
  expect(shortfalls[0]?.kilograms).toBeCloseTo(1.4, 9);
});

test('the nearest delivery has the room first, and later ones reuse it', () => {
  const plan = sowingPlan([want(50), want(20), want(30)], [basil], [place('warm', 20, 10)]);
  expect(plan.sowings.map(({ delivery, day }) => [delivery, day])).toEqual([
    [20, 4],
    [50, 34],
  ]);
  expect(plan.shortfalls).toEqual([expect.objectContaining({ delivery: 30, reason: 'no-room' })]);
});

test('past its day it is sown today while it is more likely than not, and given up after', () => {
  // 15 days at 10 are 150 units: chance by t(5) of (150 - 147) / 6.658 is 0.665.
  const late = sowingPlan([want(15)], [basil], [place('warm', 40, 10)]);
  expect(late.sowings).toEqual([expect.objectContaining({ day: 0 })]);
  expect(late.sowings[0]?.ready).toBeCloseTo(0.665, 2);
  const tooLate = sowingPlan([want(10)], [basil], [place('warm', 40, 10)]);
  expect(tooLate).toEqual({
    sowings: [],
    shortfalls: [{ ...want(10), trays: 20, reason: 'too-late' }],
  });
});

test('each reason for a shortfall is told apart', () => {
  const reasonOf = (crops: readonly PlannedCrop[], places: readonly PlannedPlace[]) =>
    sowingPlan([want(30)], crops, places).shortfalls[0]?.reason;
  expect(reasonOf([], [place('warm', 40, 10)])).toBe('no-past-batches');
  expect(reasonOf([{ ...basil, pastDegreeDays: [] }], [place('warm', 40, 10)])).toBe(
    'no-past-batches',
  );
  expect(reasonOf([{ ...basil, perTray: [] }], [place('warm', 40, 10)])).toBe('no-past-batches');
  expect(reasonOf([basil], [place('warm', 40, 10, 20)])).toBe('beyond-the-days');
  expect(reasonOf([basil], [{ ...place('warm', 40, 10), unitsOf: () => null }])).toBe('no-room');
  expect(reasonOf([basil], [place('ice', 40, 0)])).toBe('too-late');
});

test('nothing wanted is nothing sown; days and weights that cannot be are refused', () => {
  expect(sowingPlan([want(30, 0)], [basil], [])).toEqual({ sowings: [], shortfalls: [] });
  expect(() => sowingPlan([want(-1)], [basil], [])).toThrow('Expected day of delivery from 0');
  expect(() => sowingPlan([want(3, -1)], [basil], [])).toThrow('Expected wanted weight from 0');
});

test('no place ever holds more than it has room for, and every kilogram is sown or said', () => {
  const deliveries = fc.array(
    fc.record({
      delivery: fc.integer({ min: 0, max: 58 }),
      kilograms: fc.double({ min: 0.1, max: 12, noNaN: true }),
    }),
    { maxLength: 8 },
  );
  const rooms = fc.array(
    fc.record({
      room: fc.integer({ min: 0, max: 40 }),
      warmth: fc.double({ min: 0, max: 15, noNaN: true }),
    }),
    { maxLength: 3 },
  );
  fc.assert(
    fc.property(deliveries, rooms, (wanted, described) => {
      const places = described.map(({ room, warmth }, i) => place(`house-${i}`, room, warmth));
      const asked = wanted.map((each) => ({ ...each, crop: 'basil' }));
      const { sowings, shortfalls } = sowingPlan(asked, [basil], places);
      for (const { id, free } of places)
        free.forEach((room, day) => {
          const standing = sowings.filter(
            (one) => one.place === id && one.day <= day && day <= one.delivery,
          );
          expect(standing.reduce((sum, { trays }) => sum + trays, 0)).toBeLessThanOrEqual(room);
        });
      const total = (all: readonly { kilograms: number }[]) =>
        all.reduce((sum, { kilograms }) => sum + kilograms, 0);
      expect(total(sowings) + total(shortfalls)).toBeCloseTo(total(asked), 6);
      for (const { ready } of sowings) expect(ready ?? 1).toBeGreaterThanOrEqual(0.5);
    }),
  );
});
