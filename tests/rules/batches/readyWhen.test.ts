import fc from 'fast-check';
import { expect, test } from 'vitest';
import { batchSpread, doubtedCourses, needOf, readyWhen } from '../../../rules/batches/index.ts';
import { truth } from '../../truth/index.ts';

const past = [142, 151, 138, 147, 155, 149];
const need = batchSpread(past);
const level = (units: number, days = 60) => Array.from({ length: days }, () => units);
const batch = { need, soFar: 96, courses: [level(9.5)], confidence: 0.8 };

test.for(truth('batches/harvestWindow.csv', ['confidence', 'early', 'expected', 'late']))(
  'with one course of equal days it is the window of the sheet, at $confidence',
  ({ confidence, early, expected, late }) => {
    const found = readyWhen({ ...batch, confidence });
    expect(Math.abs((found?.early ?? 0) - early)).toBeLessThan(5e-5);
    expect(Math.abs((found?.expected ?? 0) - expected)).toBeLessThan(5e-5);
    expect(Math.abs((found?.late ?? 0) - late)).toBeLessThan(5e-5);
  },
);

test.for(truth('batches/replayedYears.csv', ['year', 'a', 'b', 'c', 'd', 'e', 'f', 'days']))(
  'year $year reaches 40 units after $days days',
  ({ a, b, c, d, e, f, days }) => {
    const sure = { n: 0, mean: 40, sd: 1e-6, df: null };
    const found = readyWhen({ ...batch, need: sure, soFar: 0, courses: [[a, b, c, d, e, f]] });
    expect(Math.abs((found?.expected ?? 0) - days)).toBeLessThan(1e-3);
  },
);

test('past years make the interval where the need hardly varies', () => {
  const sure = { n: 0, mean: 40, sd: 1e-6, df: null };
  const courses = truth('batches/replayedYears.csv', [
    'year',
    'a',
    'b',
    'c',
    'd',
    'e',
    'f',
    'days',
  ]).map(({ a, b, c, d, e, f }) => [a, b, c, d, e, f]);
  // In order 3.7, 4.2222, 4.4444, 5.3333, 5.5: 1 in 10 is the first, half the third, 9 in 10 the last.
  const found = readyWhen({ ...batch, need: sure, soFar: 0, courses });
  expect(found?.early).toBeCloseTo(3.7, 3);
  expect(found?.expected).toBeCloseTo(4.4444, 3);
  expect(found?.late).toBeCloseTo(5.5, 3);
});

test('doubt about a whole period widens it as the sheet reckons: 0.9752 days', () => {
  // Section 3.1 of the sheet, s_r 1.2 at 9.5 a day: SD 0.9752 d. Two t-spreads are no normal one, so
  // it is held against the half width at 80 %: near 1.2816 to 1.4759 of them (5 degrees of freedom).
  const found = readyWhen({ ...batch, courses: doubtedCourses(level(9.5), 1.2 / 9.5) });
  const half = (Number(found?.late) - Number(found?.early)) / 2;
  expect(half).toBeGreaterThan(1.2816 * 0.9752 * 0.97);
  expect(half).toBeLessThan(1.4759 * 0.9752 * 1.08);
});

test('days as warm as those before leave the need as it was, but for a hair', () => {
  const same = needOf(
    past.map((degreeDays) => ({ degreeDays, lastDay: 9 })),
    9,
  );
  expect(same.mean).toBeCloseTo(147, 9);
  expect(same.sd / need.sd).toBeGreaterThan(0.97);
  expect(same.sd / need.sd).toBeLessThan(1.03);
  // A warmer day at the end overshoots by half of what it is warmer by.
  expect(
    needOf(
      past.map((degreeDays) => ({ degreeDays, lastDay: 9 })),
      13,
    ).mean,
  ).toBeCloseTo(149, 9);
});

test('unknown in, unknown out; what the days do not reach is not known', () => {
  expect(readyWhen({ ...batch, soFar: null })).toBeNull();
  expect(readyWhen({ ...batch, courses: [level(1, 10)] })).toEqual({
    ...{ early: null, expected: null, late: null },
  });
  expect(readyWhen({ ...batch, soFar: 400 })).toEqual({ early: 0, expected: 0, late: 0 });
  expect(() => readyWhen({ ...batch, courses: [] })).toThrow('Expected number of courses');
});

const units = fc.double({ min: 0.5, max: 25, noNaN: true });
const anyCourses = fc.array(fc.array(units, { minLength: 60, maxLength: 60 }), {
  ...{ minLength: 1, maxLength: 5 },
});
const later = (a: number | null | undefined, b: number | null | undefined) =>
  (a ?? Number.POSITIVE_INFINITY) - (b ?? Number.POSITIVE_INFINITY);

test('more heat never makes it later', () => {
  fc.assert(
    fc.property(
      anyCourses,
      fc.double({ min: 0, max: 160, noNaN: true }),
      units,
      (courses, soFar, more) => {
        const less = readyWhen({ ...batch, soFar, courses });
        const warmer = courses.map((course) => course.map((one) => one + more));
        for (const found of [
          readyWhen({ ...batch, soFar: soFar + more, courses }),
          readyWhen({ ...batch, soFar, courses: warmer }),
        ])
          for (const end of ['early', 'expected', 'late'] as const) {
            if (less?.[end] === null) continue;
            expect(later(found?.[end], less?.[end])).toBeLessThanOrEqual(1e-6);
          }
      },
    ),
    { numRuns: 40 },
  );
});

test('what was not measured, and standing for want of light, only widen', () => {
  const guessed = fc.double({ min: 0, max: 400, noNaN: true });
  fc.assert(
    fc.property(guessed, units, (variance, perDay) => {
      const given = { ...batch, courses: [level(perDay, 200)] };
      const sure = readyWhen(given);
      for (const wider of [
        readyWhen({ ...given, variance }),
        readyWhen({ ...given, standing: true }),
      ]) {
        expect(later(wider?.early, sure?.early)).toBeLessThanOrEqual(1e-6);
        expect(later(sure?.late, wider?.late)).toBeLessThanOrEqual(1e-6);
      }
    }),
    { numRuns: 60 },
  );
});
