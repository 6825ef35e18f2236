import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  chillingWarning,
  freezingNow,
  respirationRates,
  sellFirst,
  storageOf,
  storageTable,
} from '../../../rules/cooler/index.ts';
import { instant, MINUTE } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

test.for(truth('cooler/chilling.csv', ['room_c'], ['crop', 'warned']))(
  '$crop in a room at $room_c °C is warned about: $warned',
  ({ room_c, crop, warned }) => {
    expect(chillingWarning(storageOf(crop)?.chillMin ?? null, room_c)).toBe(warned === 'yes');
  },
);

test('a room nobody measured gives no all-clear to a crop that cold hurts', () => {
  expect(chillingWarning(12, null)).toBeNull();
  expect(chillingWarning(null, null)).toBe(false);
});

// What the sources printed in the table say: Handbook 66, Lange & Cameron 1994, UC Davis and others.
test.for([
  ['lettuce-leaf', 0, 0, 7, 7, -0.2, null],
  ['lettuce-head', 0, 0, 21, 28, -0.2, null],
  ['strawberry', 0, 0, 7, 10, null, null],
  ['basil', 12, 15, 12, 12, null, 12],
  ['eggplant', 10, 12, 14, 14, null, 10],
  ['pea-shoots', 0, 1, 2, 2, null, null],
  ['salad-mix', 0, 3, 7, 14, null, null],
  ['cucumber', 10, 10, 7, 14, null, 10],
  ['pepper', 7, 10, 14, 21, null, 7],
  ['snap-bean', 4, 7, 7, 10, null, 4],
] as const)(
  '%s is stored at %s to %s °C and keeps %s to %s days',
  ([crop, from, to, short, long, ice, chill]) => {
    const row = storageOf(crop);
    expect(row?.best).toEqual({ from, to });
    expect(row?.life).toEqual({ from: short, to: long });
    expect([row?.freezesAt, row?.chillMin]).toEqual([ice, chill]);
  },
);

test.for([
  ['lettuce-leaf', 95, 100, 0],
  ['lettuce-head', 95, 100, 0],
  ['strawberry', 90, 95, 0],
  ['basil', 90, 95, 15],
  ['eggplant', 90, 95, 10],
  ['pea-shoots', 98, 100, 0],
  ['salad-mix', 95, 100, 0],
] as const)('%s likes %s to %s %% and its life is given at %s °C', ([crop, from, to, lifeAt]) => {
  expect(storageOf(crop)).toMatchObject({ humidity: { from, to }, lifeAt });
});

test('every row says where it is from; a crop nobody tested has none', () => {
  for (const { source, best } of storageTable) {
    expect(source).not.toBe('');
    expect(best.from).toBeLessThanOrEqual(best.to);
  }
  expect(storageOf('radish-microgreens')).toMatchObject({ best: { from: 1, to: 1 }, life: null });
  expect(storageOf('buckwheat-microgreens')).toMatchObject({
    best: { from: 5, to: 10 },
    life: null,
  });
  expect([storageOf('pepper')?.lifeAt, storageOf('snap-bean')?.lifeAt]).toEqual([7, 4]);
  expect(storageOf('cucumber')?.lifeAt).toBe(10);
  expect(storageOf('sunflower-microgreens')).toBeNull();
});

test('respiration rates are those the handbook prints', () => {
  // USDA Handbook 66; leaf lettuce from memory, strawberry the middle of 12-20, 50-100, 100-200.
  const rates = (crop: string) =>
    respirationRates[crop]?.map(({ temperature, rate }) => [temperature, rate]);
  expect(rates('lettuce-leaf')).toEqual([
    [0, 23],
    [5, 30],
    [10, 39],
    [15, 63],
    [20, 101],
  ]);
  expect(rates('strawberry')).toEqual([
    [0, 16],
    [10, 75],
    [20, 150],
  ]);
});

const cold = (minutes: readonly number[], value: number | null) =>
  minutes.map((minute) => ({ t: instant(minute * MINUTE), value }));
const now = instant(60 * MINUTE);

test('below 0 °C for 15 minutes is freezing; 14.8 minutes are not yet known to be', () => {
  expect(freezingNow(cold([45, 50, 55, 60], -0.1), now)).toBe(true);
  expect(freezingNow(cold([44, 50, 55, 59], -0.1), now)).toBe(true);
  expect(freezingNow(cold([45.2, 50, 55, 60], -0.1), now)).toBeNull();
  expect(freezingNow(cold([44.9, 50, 55, 60], 0.01), now)).toBe(false);
});

test('readings ten minutes apart are joined, further apart they are not', () => {
  expect(freezingNow(cold([40, 50, 60], -0.5), now)).toBe(true);
  expect(freezingNow(cold([39.8, 49.9, 60], -0.5), now)).toBeNull();
});

test('a moment above 0 °C, a hole, or nothing at all is not freezing', () => {
  const thawed = [...cold([40, 45, 50], -0.5), ...cold([52], 0.2), ...cold([55, 60], -0.5)];
  expect(freezingNow(thawed, now)).toBe(false);
  expect(freezingNow([...cold([40, 45], -0.5), ...cold([60], -0.5)], now)).toBeNull();
  expect(freezingNow([...cold([40, 50], -0.5), ...cold([55], null)], now)).toBeNull();
  expect(freezingNow([], now)).toBeNull();
});

const stored = (id: string, daysLeft: number | null, kilograms = 1, storedAt = 0) => ({
  id,
  daysLeft,
  kilograms,
  pricePerKilogram: 10,
  storedAt: instant(storedAt),
});
const order = (lots: Parameters<typeof sellFirst>[0], days: number) =>
  sellFirst(lots, days).map(({ id }) => id);

const two = truth('cooler/sellFirst.csv', ['left_d', 'slack_d', 'turn'], ['lot']);

test.for(two)('with the sale in four days lot $lot has $slack_d d and turn $turn', (row) => {
  const turns = sellFirst(
    two.toReversed().map(({ lot, left_d }) => stored(lot, left_d)),
    4,
  );
  expect(turns[row.turn - 1]?.id).toBe(row.lot);
  expect(turns[row.turn - 1]?.slack).toBeCloseTo(row.slack_d, 9);
  expect(turns.map(({ because }) => because)).toEqual(['over-before-sale', 'least-slack']);
});

test('equal slack goes by money; without a history it is first in, first out', () => {
  expect(order([stored('small', 6, 1), stored('large', 6, 3)], 4)).toEqual(['large', 'small']);
  expect(order([stored('late', null, 9, 5), stored('early', null, 1, 2)], 4)).toEqual([
    'early',
    'late',
  ]);
  expect(order([stored('long', 9), stored('dark', null), stored('over', 1)], 4)).toEqual([
    'over',
    'dark',
    'long',
  ]);
});

test('no lot is lost or shown twice, and slack never falls within its part', () => {
  const left = fc.option(fc.double({ min: 0, max: 20, noNaN: true }));
  fc.assert(
    fc.property(fc.array(left, { maxLength: 20 }), (days) => {
      const turns = sellFirst(
        days.map((each, i) => stored(`${i}`, each)),
        4,
      );
      const known = turns.flatMap(({ slack }) => (slack === null ? [] : [slack]));
      return (
        new Set(turns.map(({ id }) => id)).size === days.length &&
        known.every((slack, i) => slack >= (known[i - 1] ?? Number.NEGATIVE_INFINITY))
      );
    }),
  );
});
