import { expect, test } from 'vitest';
import { parseDlyLine, parseIsdLiteLine } from '../../../rules/stations/index.ts';

// Invented values in the published layouts: every column full, no two values alike.

test('all 31 days of a full month are read, each from its own column', () => {
  const days = Array.from({ length: 31 }, (_, index) => -(10_101 + 7 * index) % 900);
  const cells = days.map(
    (count, index) => `${String(count).padStart(5)}${index === 4 ? 'L' : ' '} S`,
  );
  const line = `ABC123456-_202512TMIN${cells.join('')}`;
  expect(line).toHaveLength(269);
  const found = parseDlyLine(line, 1);
  expect(found.map(({ value }) => value)).toEqual(days.map((count) => count / 10));
  expect(found.map(({ day }) => day.slice(0, 8))).toEqual(Array(31).fill('2025-12-'));
  expect(found.map(({ day }) => Number(day.slice(8)))).toEqual(days.map((_, index) => index + 1));
  expect(found.map(({ lagged }, index) => lagged === (index === 4))).toEqual(Array(31).fill(true));
  expect(new Set(found.map(({ station }) => station))).toEqual(new Set(['ABC123456-_']));
});

test('rain of five digits fills its column and leaves its neighbour alone', () => {
  const line = `ABC12345678202501PRCP${'12345  S19999  S    7T S'}`;
  const [first, second, third] = parseDlyLine(line, 1);
  expect([first?.value, second?.value, third?.value]).toEqual([1234.5, 1999.9, 0.7]);
  expect(third?.trace).toBe(true);
});

test('all eight values of an hour are read, each from its own column', () => {
  const line = '2016 02 29 17  -123  -234 10345   267   289    13  4321  9876';
  expect(line).toHaveLength(61);
  expect(parseIsdLiteLine(line, 1)).toEqual({
    t: Date.UTC(2016, 1, 29, 17),
    temperature: -12.3,
    dewPoint: -23.4,
    pressure: 1034.5,
    windDirection: 267,
    wind: 28.9,
    sky: 13,
    rain: 432.1,
    rainTrace: false,
    rain6: 987.6,
    rain6Trace: false,
  });
});
