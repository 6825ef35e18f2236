import fc from 'fast-check';
import { expect, test } from 'vitest';
import { brierParts, brierScore, brierSkill } from '../../../rules/statistics/index.ts';
import { truth } from '../../truth/index.ts';

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

const stated = [0.1, 0.1, 0.1, 0.1, 0.3, 0.3, 0.3, 0.7, 0.7, 0.7];
const happened = [0, 0, 0, 1, 0, 0, 1, 1, 1, 0];

const parts = ['brier', 'reliability', 'resolution', 'uncertainty', 'skill'] as const;
test.for(truth('statistics/brierParts.csv', parts, ['forecasts', 'outcomes']))(
  '$forecasts with $outcomes: $brier = $reliability - $resolution + $uncertainty',
  ({ forecasts, outcomes, ...row }) => {
    const list = (text: string) => text.split(' ').map(Number);
    const found = brierParts(list(forecasts), list(outcomes));
    for (const part of parts) expect(found[part]).toBeCloseTo(row[part], 8);
  },
);

test('ten forecasts fall in three groups of what was said', () => {
  const { enough, groups } = brierParts(stated, happened);
  expect(enough).toBe(false);
  expect(groups.map(({ stated: p, n, happened: k }) => [p, n, k])).toEqual([
    [0.1, 4, 1],
    [0.3, 3, 1],
    [0.7, 3, 2],
  ]);
  // SciPy 1.17 (binomtest, method wilson) for 1 of 4.
  expect(groups[0]?.between[0]).toBeCloseTo(0.0456, 4);
  expect(groups[0]?.between[1]).toBeCloseTo(0.6994, 4);
});

test('the parts always add up to the score', () => {
  const chance = fc.nat(10).map((tenths) => tenths / 10);
  fc.assert(
    fc.property(fc.array(fc.tuple(chance, fc.boolean()), { minLength: 1 }), (list) => {
      const parts = brierParts(
        list.map(([p]) => p),
        list.map(([, o]) => o),
      );
      const sum = parts.reliability - parts.resolution + parts.uncertainty;
      return Math.abs(sum - parts.brier) < 1e-12 && parts.enough === list.length >= 20;
    }),
  );
});

test('nothing that varied leaves no skill to show', () => {
  expect(brierParts([0.2, 0.4], [0, 0]).skill).toBeNull();
  expect(brierSkill([0.2, 0.4], [0, 0], 0)).toBeNull();
});

test('skill is against the base rate of older seasons', () => {
  // By hand: always 0.5 scores 0.25, so 1 - 0.218 / 0.25.
  expect(brierSkill(stated, happened, 0.5)).toBeCloseTo(0.128, 12);
  expect(brierSkill(stated, happened, 0.4)).toBeCloseTo(0.0916666667, 9);
  expect(() => brierParts([0.5], [0.5])).toThrow('Expected outcome from 0 to 1, whole, got 0.5');
  expect(() => brierScore([0.5], [null as unknown as number])).toThrow(RangeError);
});
