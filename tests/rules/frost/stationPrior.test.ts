import { expect, test } from 'vitest';
import { stationPrior } from '../../../rules/frost/index.ts';

/** Sixty nights of 2, 4 and 6 °C in turn. */
const lows = Array.from({ length: 60 }, (_, i) => [2, 4, 6][i % 3] ?? 0);

test('without shared nights a station tells its own mean, with 3 K of doubt about the place', () => {
  // By hand: mean 4, squares 40 x 4 = 160 over 59, times 61/60, plus 9.
  expect(stationPrior(lows, [])).toEqual({
    mean: 4,
    sd: Math.sqrt((160 / 59) * (61 / 60) + 9),
    df: 59,
    nights: 60,
  });
});

test('nine shared nights shift it, and narrow the doubt to that of their mean', () => {
  const shared = [-3, -2, -1, -3, -2, -1, -3, -2, -1];
  // By hand: mean -2, squares 6 over 8, over 9 nights.
  const prior = stationPrior(lows, shared);
  expect(prior?.mean).toBe(2);
  expect(prior?.sd).toBeCloseTo(Math.sqrt((160 / 59) * (61 / 60) + 6 / 8 / 9), 12);
  expect(prior?.df).toBe(8);
  expect(stationPrior(lows, shared.slice(1))?.mean).toBe(4);
});

test('a few weeks of one year are no prior', () => {
  expect(stationPrior(lows.slice(1), [])).toBeNull();
  expect(stationPrior([], [])).toBeNull();
});

test('what is no temperature is refused', () => {
  expect(() => stationPrior([-61], [])).toThrow('Expected low of a night from -60 to 60 °C');
  expect(() => stationPrior([60.1], [])).toThrow('Expected low of a night');
  expect(stationPrior([...lows.slice(2), -60, 60], [])?.nights).toBe(60);
  expect(() => stationPrior(lows, [Number.NaN])).toThrow('Expected difference from');
});
