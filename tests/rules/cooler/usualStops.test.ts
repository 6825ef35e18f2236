import fc from 'fast-check';
import { expect, test } from 'vitest';
import { roomContents, type SupplyStop, usualStops } from '../../../rules/cooler/index.ts';

// Expectations by hand from the rule as it is told: 10 of 14 days, within half an hour.

const nightly = (days: number, from: (day: number) => number, long = 330): SupplyStop[] =>
  Array.from({ length: days }, (_, day) => ({ day, from: from(day), to: from(day) + long }));

test('a stop that comes each night is told from the early ones to the late ones', () => {
  // From 23:40 to 23:50 on, five and a half hours: 1420 to 1430, until 1750 to 1760.
  const [stop, ...more] = usualStops(nightly(14, (day) => 1420 + (day % 3) * 5));
  expect(more).toEqual([]);
  expect(stop?.days).toBe(14);
  expect(stop?.from).toBeGreaterThanOrEqual(1420);
  expect(stop?.from).toBeLessThan(1425);
  expect(stop?.to).toBeGreaterThan(1755);
  expect(stop?.to).toBeLessThanOrEqual(1760);
});

test('nine days of fourteen are no habit, ten are', () => {
  expect(usualStops(nightly(9, () => 60))).toEqual([]);
  expect(usualStops(nightly(10, () => 60))).toMatchObject([{ days: 10, from: 60, to: 390 }]);
});

test('stops that wander teach nothing, and several of one day count once', () => {
  expect(usualStops(nightly(14, (day) => (day * 97) % 1440))).toEqual([]);
  expect(usualStops(nightly(9, () => 60).flatMap((stop) => [stop, stop]))).toEqual([]);
});

test('midnight is no wall: stops beginning just before and just after it are the same', () => {
  const [stop] = usualStops(nightly(12, (day) => (day % 2 === 0 ? 1435 : 5)));
  expect(stop?.days).toBe(12);
  expect(stop?.from).toBeCloseTo(1435, 6);
  expect((stop?.to ?? 0) - (stop?.from ?? 0)).toBeCloseTo(340, 6);
});

test('two stops a day are two habits', () => {
  const both = [...nightly(14, () => 600, 360), ...nightly(14, () => 1320, 480)];
  expect(usualStops(both)).toMatchObject([
    { from: 600, to: 960 },
    { from: 1320, to: 1800 },
  ]);
});

test('whatever the stops, each habit has its ten days and lies on the clock', () => {
  const anyStop = fc.record({
    day: fc.integer({ min: 0, max: 13 }),
    from: fc.integer({ min: 0, max: 1439 }),
    long: fc.integer({ min: 120, max: 1400 }),
  });
  fc.assert(
    fc.property(fc.array(anyStop, { maxLength: 60 }), (drawn) => {
      const stops = drawn.map(({ day, from, long }) => ({ day, from, to: from + long }));
      for (const { from, to, days } of usualStops(stops)) {
        expect(days).toBeGreaterThanOrEqual(10);
        expect(from).toBeGreaterThanOrEqual(0);
        expect(from).toBeLessThan(1440);
        expect(to).toBeGreaterThan(from);
      }
    }),
  );
});

test('how full a room is: of the most lately; not known without a book', () => {
  expect([0, 9, 10, 59, 60, 100].map((kilograms) => roomContents(kilograms, 100))).toEqual([
    ...['empty', 'empty', 'half', 'half', 'full', 'full'],
  ]);
  expect(roomContents(null, 10)).toBeNull();
  expect(roomContents(5, 19)).toBeNull();
});
