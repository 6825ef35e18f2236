import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  anomalyWeight,
  climateUnits,
  daysToReach,
  forecastWeight,
  placeUnits,
  replayYears,
  unitsAhead,
} from '../../../rules/batches/index.ts';
import { dayAt, dayNumber } from '../../../rules/heat/index.ts';
import { truth } from '../../truth/index.ts';

const week = truth('batches/unitsAhead.csv', ['lead', 'forecast', 'climate', 'expected']);
const climate = week.map((row) => row.climate);
const expected = unitsAhead(
  week.map(({ forecast }) => forecast),
  climate,
);

test.for(week)('$lead days ahead $forecast against $climate gives $expected', (row) => {
  expect(expected[row.lead]).toBeCloseTo(row.expected, 9);
});

test('51 units are reached after 5.1468 days', () => {
  expect(daysToReach(expected, 51)).toBeCloseTo(5.146809, 6); // NumPy (interp)
  expect(daysToReach(expected, 0)).toBe(0);
  expect(daysToReach(expected, 60)).toBeNull();
});

test('without a forecast the climate is all there is', () => {
  expect(unitsAhead([], climate)).toEqual(climate);
  expect(unitsAhead([null, 11], climate)[0]).toBe(climate[0]);
  expect(unitsAhead([null, 11], climate)[1]).toBeCloseTo(10.6, 9);
  expect(unitsAhead([12], [9], () => 0.5)).toEqual([10.5]);
});

const pairs = [2, -1, 3, 0, -2, 1, 4, -3].map((forecast, index) => ({
  forecast,
  observed: [1.5, -0.2, 2.2, 0.4, -1.6, 0.1, 2.9, -1.8][index] ?? 0,
}));

test('eight pairs would give the forecast 0.6841', () => {
  expect(anomalyWeight(pairs)).toBeCloseTo(0.684091, 6); // NumPy (lstsq through the origin)
  expect(anomalyWeight([{ forecast: 0, observed: 2 }])).toBeNull();
  expect(anomalyWeight([{ forecast: 1, observed: -2 }])).toBe(0);
  expect(anomalyWeight([{ forecast: 1, observed: 2 }])).toBe(1);
});

test('the fixed weights fall with the days ahead, and thirty pairs replace them', () => {
  // Common practice, no source.
  expect([0, 1, 2, 3, 4, 5, 20].map((lead) => forecastWeight(lead))).toEqual([
    0.9, 0.8, 0.6, 0.4, 0.2, 0, 0,
  ]);
  const many = (count: number) =>
    Array.from({ length: count }, () => ({ forecast: 2, observed: 1 }));
  expect(forecastWeight(0, many(29))).toBe(0.9);
  expect(forecastWeight(0, many(30))).toBe(0.5);
});

test('the climate of a date is the mean of seven days either side, over the years', () => {
  const record = [
    { day: '2023-12-27', degreeDays: 1 },
    { day: '2024-12-26', degreeDays: 100 }, // eight days away,
    { day: '2025-01-10', degreeDays: 3 },
    { day: '2025-01-11', degreeDays: 100 },
    { day: '2024-01-03', degreeDays: 8 },
    { day: '2025-01-03', degreeDays: null },
  ];
  expect(climateUnits(record, '2026-01-03')).toBe(4);
  expect(climateUnits(record, '2026-07-03')).toBeNull();
});

test('a place brings what its line over the last 21 days says', () => {
  const day = (outdoors: number, place: number | null) => ({ outdoors, place });
  const line = Array.from({ length: 21 }, (_, index) => day(index / 2, 3 + (1.2 * index) / 2));
  expect(placeUnits(line, 4)).toBeCloseTo(7.8, 9);
  expect(placeUnits([day(5, 50), ...line], 4)).toBeCloseTo(7.8, 9);
  expect(placeUnits([day(5, 50), ...line.slice(1)], 4)).not.toBeCloseTo(7.8, 1);
  expect(placeUnits([day(4, 6), day(4, 8), day(4, 7)], 9)).toBe(7);
  expect(placeUnits([day(4, 6), day(4, 8), day(4, null)], 9)).toBeNull();
  expect(placeUnits([day(10, 5), day(20, 15), day(15, 10)], 1)).toBe(0);
});

const years = [
  [8, 9, 10, 11, 9, 8],
  [6, 7, 7, 8, 9, 9],
  [10, 11, 12, 10, 9, 9],
  [7, 8, 6, 7, 8, 8],
  [9, 9, 9, 9, 9, 9],
];

test('past years reach forty units after 5, 6, 4, 6 and 5 days', () => {
  // NumPy (cumsum).
  expect(replayYears(years, 40)).toEqual({ days: [5, 6, 4, 6, 5], median: 5 });
});

test('years that do not reach it count as later than all that do', () => {
  expect(replayYears(years, 50)).toEqual({ days: [6, null, 5, null, 6], median: 6 });
  expect(replayYears(years, 54)).toEqual({ days: [6, null, 6, null, 6], median: 6 });
  expect(replayYears(years.slice(0, 2), 50).median).toBeNull();
  expect(replayYears(years, 55).median).toBeNull();
  expect(replayYears([], 40)).toEqual({ days: [], median: null });
});

test('more units never take fewer days, and warmer days never more', () => {
  const units = fc.array(fc.double({ min: 0, max: 20, noNaN: true }), { minLength: 5 });
  const need = fc.double({ min: 0, max: 100, noNaN: true });
  fc.assert(
    fc.property(units, need, need, (list, a, b) => {
      const days = (amount: number, of = list) => daysToReach(of, amount) ?? 1e9;
      const warmer = list.map((each) => each + 1);
      return (
        days(Math.min(a, b)) <= days(Math.max(a, b)) + 1e-9 && days(a, warmer) <= days(a) + 1e-9
      );
    }),
  );
});

test('the days around a date are the same from either side of the year', () => {
  const any = fc.integer({ min: dayNumber('2021-01-01'), max: dayNumber('2023-12-31') });
  fc.assert(
    fc.property(any, fc.integer({ min: -20, max: 20 }), (number, away) => {
      const record = [{ day: dayAt(number + away), degreeDays: 7 }];
      return (climateUnits(record, dayAt(number)) === 7) === Math.abs(away) <= 7;
    }),
  );
});
