import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  countedWithin,
  type FrostHistory,
  firstFrostNights,
  frostCameBy,
  frostComesAfter,
  frostHistory,
  frostWithin,
  nextFrostNights,
  type SeasonFrost,
} from '../../../rules/frost/index.ts';
import { dayAt, dayNumber } from '../../../rules/heat/index.ts';
import { truth } from '../../truth/index.ts';

const dates = truth('frost/firstFrost.csv', ['day']).map(({ day }) => day);
const seasons = (days: readonly (number | null)[]): SeasonFrost[] =>
  days.map((day, index) => ({ season: 2000 + index, day, frost: day !== null, missing: 0 }));

const anyDates = fc.array(fc.integer({ min: 40, max: 200 }), { minLength: 8, maxLength: 40 });
const anyHistory = fc
  .record({ days: anyDates, without: fc.integer({ min: 0, max: 8 }) })
  .map(({ days, without }) => frostHistory(seasons([...days, ...Array(without).fill(null)])));

test('the example list: 0.3630 and 0.7052 for the week from days 101 and 116', () => {
  // Method sheet 7.3, the predictive t of the fifteen dates in 7.2; SciPy 1.17 gives the same.
  const history = frostHistory(seasons(dates));
  expect(history.way).toBe('curve');
  expect(frostWithin(history, 101, 7)).toBeCloseTo(0.363, 4);
  expect(frostWithin(history, 116, 7)).toBeCloseTo(0.7052, 4);
  expect(countedWithin(history, 101, 7)).toBeCloseTo(0.375, 9); // (4 + 1/2)/(11 + 1), by hand
});

test('N(300, 12), none by day 298: 0.4022 for the next week, 0.2790 when one season in five has none', () => {
  // Method sheet 7.3.
  const curve = { mean: 300, sd: 12, df: Number.POSITIVE_INFINITY };
  const history: FrostHistory = { way: 'curve', dates: [], known: 30, share: 1, curve };
  expect(frostWithin(history, 298, 7)).toBeCloseTo(0.4022, 4);
  expect(frostWithin({ ...history, share: 0.8 }, 298, 7)).toBeCloseTo(0.279, 4);
});

test('offsets of three seasons and more move the dates and widen the curve', () => {
  // Method sheet 7.5: N(100.4, 9.3824), 0.3413 for the week from day 93.
  const history = frostHistory(seasons(dates), [-6, -9, -4, -11, -7]);
  expect(history.curve?.mean).toBeCloseTo(100.4, 9);
  expect(history.curve?.sd).toBeCloseTo(9.3824, 4);
  expect(frostWithin(history, 93, 7)).toBeCloseTo(0.3413, 4);
  expect(history.dates[0]).toBeCloseTo(Math.min(...dates) - 7.4, 9);
});

test('eight seasons are counted, seven tell nothing; seasons without a frost count as seasons', () => {
  const eight = frostHistory(seasons([100, 110, 120, null, null, null, null, null]));
  expect(eight).toMatchObject({ way: 'counted', known: 8, curve: null });
  expect(eight.share).toBeCloseTo(3.5 / 9, 9);
  expect(frostCameBy(eight, 115)).toBeCloseTo(2.5 / 9, 9); // (2 + 1/2)/(8 + 1), by hand
  expect(frostComesAfter(eight, 115)).toBeCloseTo(1.5 / 9, 9);
  expect(frostWithin(eight, 105, 7)).toBeCloseTo(1.5 / 8, 9); // one of the seven still open
  const seven = frostHistory(seasons([100, 110, 120, 105, 101, 99, 98]));
  expect(seven.way).toBe('unknown');
  for (const chance of [
    frostCameBy(seven, 115),
    frostComesAfter(seven, 115),
    frostWithin(seven, 1, 7),
  ])
    expect(chance).toBeNull();
});

test('odds never fall as the date goes on, and are never 0 or 1', () => {
  fc.assert(
    fc.property(anyHistory, (history) => {
      let before = 0;
      let after = 1;
      for (let day = 0; day <= 366; day += 1) {
        const by = frostCameBy(history, day) ?? Number.NaN;
        const left = frostComesAfter(history, day) ?? Number.NaN;
        for (const p of [by, left]) if (!(p > 0 && p < 1)) return false;
        if (by < before || left > after) return false;
        before = by;
        after = left;
      }
      return true;
    }),
    { numRuns: 60 },
  );
});

test('more days ahead are never less likely to have the frost, whatever the day', () => {
  fc.assert(
    fc.property(anyHistory, fc.integer({ min: 0, max: 250 }), (history, day) => {
      let before = 0;
      for (let days = 1; days <= 60; days += 1) {
        const p = frostWithin(history, day, days);
        if (p === null) return history.way === 'counted';
        if (!(p > 0 && p < 1) || p < before) return false;
        before = p;
      }
      return true;
    }),
    { numRuns: 100 },
  );
});

test('night by night the chances multiply to what the season says of the whole stretch', () => {
  fc.assert(
    fc.property(anyHistory, fc.integer({ min: 0, max: 200 }), (history, day) => {
      const nights = firstFrostNights(history, day, 40);
      if (nights === null) return frostWithin(history, day, 40) === null;
      const spared = nights.reduce((left, chance) => left * (1 - chance), 1);
      return (
        nights.every((chance) => chance >= 0 && chance <= 1) &&
        Math.abs(1 - spared - (frostWithin(history, day, 40) ?? Number.NaN)) < 1e-9
      );
    }),
    { numRuns: 60 },
  );
});

// Ten years of nights at 5 °C, each with one frost on the night given.
const years = (frosts: readonly (string | null)[]) =>
  frosts.flatMap((frost, index) =>
    Array.from({ length: 365 }, (_, at) => {
      const night = dayAt(dayNumber(`${2010 + index}-01-01`) + at);
      return { night, low: frost !== null && night.endsWith(frost) ? -1 : 5 };
    }),
  );

test('at any time of year past years tell how long until the next frost', () => {
  const lows = years(['05-10', '05-10', '05-20', null, null, null, null, null, null, null]);
  const nights = nextFrostNights(lows, 0, '2021-05-01', 30) ?? [];
  const by = (night: number) =>
    1 - nights.slice(0, night).reduce((left, chance) => left * (1 - chance), 1);
  expect(nights).toHaveLength(30);
  expect(by(5)).toBeCloseTo((0.5 * 5) / 30 / 11, 6); // none yet: only what may always be said
  expect(by(14)).toBeCloseTo((2 + (0.5 * 14) / 30) / 11, 6); // two of ten years, by hand
  expect(by(30)).toBeCloseTo(3.5 / 11, 6);
  expect(nextFrostNights(lows.slice(0, 7 * 365), 0, '2021-05-01', 30)).toBeNull();
});

test('a year with many unknown nights is no year to count', () => {
  const lows = years(Array(9).fill('05-10')).map((night) =>
    night.night.startsWith('2012-05') || night.night.startsWith('2013-05')
      ? { ...night, low: null }
      : night,
  );
  expect(nextFrostNights(lows, 0, '2021-05-01', 30)).toBeNull();
});
