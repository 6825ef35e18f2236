import fc from 'fast-check';
import { expect, test } from 'vitest';
import { brierScore } from '../../../rules/statistics/index.ts';

test('six nights of forecasts score 0.0521, ten others 0.2180', () => {
  // Added up by hand from the definition of Brier 1950.
  const nights = brierScore([0.1, 0.3, 0.8, 0.6, 0.05, 0.9], [0, 0, 1, 1, 0, 1]);
  expect(nights).toBeCloseTo(0.3125 / 6, 12);
  const ten = [0.1, 0.1, 0.1, 0.1, 0.3, 0.3, 0.3, 0.7, 0.7, 0.7];
  expect(brierScore(ten, [0, 0, 0, 1, 0, 0, 1, 1, 1, 0])).toBeCloseTo(0.218, 12);
});

test('sure and right is 0, sure and wrong is 1, and nothing is outside', () => {
  expect(brierScore([1, 0], [true, false])).toBe(0);
  expect(brierScore([1, 0], [false, true])).toBe(1);
  const forecast = fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.boolean());
  fc.assert(
    fc.property(fc.array(forecast, { minLength: 1 }), (list) => {
      const score = brierScore(
        list.map(([p]) => p),
        list.map(([, o]) => o),
      );
      return score >= 0 && score <= 1;
    }),
  );
});

test('no forecasts have no score', () => {
  expect(() => brierScore([], [])).toThrow('Expected number of forecasts from 1');
  expect(() => brierScore([1.2], [1])).toThrow('Expected probability from 0 to 1');
  expect(() => brierScore([0.5], [])).toThrow(RangeError);
});
