import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  dailyLightIntegral,
  dayAt,
  dayLength,
  dayNumber,
  dayOfYear,
  daysApartInYear,
  daysInMonth,
  isStanding,
  standingDays,
} from '../../../rules/heat/index.ts';
import { truth } from '../../truth/index.ts';

test('12 MJ of sun are 24.678 mol of light', () => {
  // 12 x 0.45 x 4.57, by hand; the share and the conversion are from memory.
  expect(dailyLightIntegral(12)).toBeCloseTo(24.678, 9);
});

test.for(truth('heat/standingDays.csv', ['latitude', 'from', 'to', 'days']))(
  'at $latitude° salad stands from day $from to $to',
  ({ latitude, from, to, days }) => {
    expect(standingDays(latitude)).toEqual({ from, to, days });
    expect(isStanding(latitude, from)).toBe(true);
    expect(isStanding(latitude, to + 1)).toBe(false);
  },
);

test('near the equator no day is that short', () => {
  expect(standingDays(10)).toBeNull();
});

test('a day ends the later, the deeper the sun may stand', () => {
  const lat = fc.double({ min: -60, max: 60, noNaN: true });
  const depth = fc.double({ min: -1, max: 12, noNaN: true });
  fc.assert(
    fc.property(lat, fc.integer({ min: 1, max: 366 }), depth, depth, (latitude, day, a, b) => {
      const short = dayLength(latitude, day, Math.min(a, b));
      return short <= dayLength(latitude, day, Math.max(a, b)) + 1e-9;
    }),
  );
});

test.for(truth('heat/days.csv', ['number', 'of_year'], ['day']))(
  '$day is day $of_year of its year and $number since 1970',
  ({ number, of_year, day }) => {
    expect(dayNumber(day)).toBe(number);
    expect(dayOfYear(day)).toBe(of_year);
    expect(dayAt(number)).toBe(day);
  },
);

test('day numbers turn round, and follow one another', () => {
  fc.assert(
    fc.property(fc.integer({ min: -719_162, max: 2_932_895 }), (number) => {
      const day = dayAt(number);
      return dayNumber(day) === number && dayAt(number + 1) > day;
    }),
  );
});

test('days are as far apart within the year as the calendar says, leap years or not', () => {
  expect(daysApartInYear('2024-12-26', '2026-01-03')).toBe(8);
  expect(daysApartInYear('2025-12-26', '2025-01-03')).toBe(8);
  expect(daysApartInYear('2024-03-01', '2025-02-28')).toBe(1);
  expect(daysApartInYear('2024-02-29', '2025-02-28')).toBe(0);
  expect(daysApartInYear('2024-01-01', '2025-07-02')).toBe(182);
});

test('the month lengths are those of the calendar', () => {
  const lengths = Array.from({ length: 12 }, (_, index) => daysInMonth(2023, index + 1));
  expect(lengths).toEqual([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]);
  expect([1900, 2000, 2024].map((year) => daysInMonth(year, 2))).toEqual([28, 29, 29]);
});

test.for(['2025-02-29', '2025-13-01', '2025-00-10', '2025-04-31', '2025-04-00', '25-4-1', ''])(
  '"%s" is no day',
  (day) => {
    expect(() => dayNumber(day)).toThrow(
      `Expected a day from 0001-01-01 to 9999-12-31, got ${day}`,
    );
  },
);
