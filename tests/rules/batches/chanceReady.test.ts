import fc from 'fast-check';
import { expect, test } from 'vitest';
import { batchSpread, chanceReady, readyWhen } from '../../../rules/batches/index.ts';
import { truth } from '../../truth/index.ts';

const past = [142, 151, 138, 147, 155, 149];
const need = batchSpread(past);
const level = (units: number, days = 60) => Array.from({ length: days }, () => units);

test.for(truth('batches/readyProbability.csv', ['units', 'p']))(
  'with $units units, had or still to come for sure, it is ready with chance $p',
  ({ units, p }) => {
    const courses = [level(5)];
    expect(chanceReady({ need, soFar: units, courses }, 0)).toBeCloseTo(p, 6);
    // A day of which half is left and three whole ones bring 17.5.
    const given = { need, soFar: units - 17.5, courses, firstDay: 0.5 };
    expect(chanceReady(given, 4)).toBeCloseTo(p, 6);
  },
);

test('with years that differ it is the mean of their chances', () => {
  // From the same table: 140 units in one year, 155 in the other.
  const given = { need, soFar: 135, courses: [level(5), level(20)] };
  expect(chanceReady(given, 1)).toBeCloseTo((0.170623 + 0.858321) / 2, 6);
});

test('the chance passes one in ten, a half and nine in ten on the days that readyWhen tells', () => {
  const units = fc.double({ min: 0.5, max: 25, noNaN: true });
  const course = fc.array(units, { minLength: 60, maxLength: 60 });
  fc.assert(
    fc.property(
      fc.array(course, { minLength: 1, maxLength: 4 }),
      fc.double({ min: 0, max: 140, noNaN: true }),
      fc.double({ min: 0.01, max: 1, noNaN: true }),
      (courses, soFar, firstDay) => {
        const given = { need, soFar, courses, firstDay };
        const found = readyWhen({ ...given, confidence: 0.8 });
        for (const [at, chance] of [
          [found.early, 0.1],
          [found.expected, 0.5],
          [found.late, 0.9],
        ] as const) {
          if (at === null || at === 0) continue;
          // Days from now to mornings: the day that runs is the first, however little is left of it.
          const after = at <= firstDay ? 1 : 1 + Math.ceil(at - firstDay - 1e-6);
          expect(chanceReady(given, after)).toBeGreaterThanOrEqual(chance - 1e-4);
          expect(chanceReady(given, after - 1)).toBeLessThanOrEqual(chance + 1e-4);
        }
      },
    ),
    { numRuns: 40 },
  );
});

test('unknown in, unknown out; the first batches and days nobody knows give no chance', () => {
  const given = { need, soFar: 96, courses: [level(9.5)] };
  expect(chanceReady({ ...given, soFar: null }, 3)).toBeNull();
  expect(chanceReady({ ...given, need: batchSpread([140, 150]) }, 3)).toBeNull();
  expect(chanceReady(given, 61)).toBeNull();
  expect(() => chanceReady(given, -1)).toThrow('Expected mornings from 0 to 400');
  expect(() => chanceReady({ ...given, soFar: -1 }, 3)).toThrow('Expected units so far');
  expect(() => chanceReady({ ...given, firstDay: 2 }, 3)).toThrow('Expected share of the first');
  expect(() => chanceReady({ ...given, courses: [] }, 3)).toThrow('Expected number of courses');
  expect(() => chanceReady({ ...given, courses: [[61]] }, 1)).toThrow('Expected units of a day');
});
