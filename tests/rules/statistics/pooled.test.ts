import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pairedDifference, ratioInterval } from '../../../rules/statistics/index.ts';
import { truth } from '../../truth/index.ts';

const got = [12, 30, 18, 55, 7];
const took = [1, 2.5, 1.2, 4, 1];
const pairs = got.map((each, index) => ({ got: each, took: took[index] ?? 0 }));

test.for(truth('statistics/ratioInterval.csv', ['confidence', 'ratio', 'low', 'high']))(
  'a pooled ratio at $confidence: $ratio, $low to $high',
  ({ confidence, ratio, low, high }) => {
    const found = ratioInterval(pairs, confidence);
    expect(found?.ratio).toBeCloseTo(ratio, 6);
    expect(found?.low).toBeCloseTo(low, 6);
    expect(found?.high).toBeCloseTo(high, 6);
  },
);

test('two batches have a ratio and no interval; no effort has neither', () => {
  expect(ratioInterval(pairs.slice(0, 2), 0.8)).toEqual({
    n: 2,
    ratio: 42 / 3.5,
    low: null,
    high: null,
  });
  expect(ratioInterval([], 0.8)).toBeNull();
  expect(ratioInterval([{ got: 3, took: 0 }], 0.8)).toBeNull();
});

test('sums are pooled: a large batch weighs more than a small one', () => {
  // By hand: (300 + 120) / (4000 + 8000) is 35 in 1000; the mean of the two rates would be 45.
  const found = ratioInterval(
    [
      { got: 300, took: 4000 },
      { got: 120, took: 8000 },
    ],
    0.8,
  );
  expect(found?.ratio).toBeCloseTo(0.035, 12);
});

test('batches that all earn alike leave no doubt, and doubt grows with the confidence', () => {
  const some = fc.array(
    fc.record({
      got: fc.double({ min: -50, max: 200, noNaN: true }),
      took: fc.double({ min: 0.1, max: 10, noNaN: true }),
    }),
    { minLength: 3, maxLength: 12 },
  );
  fc.assert(
    fc.property(some, (batches) => {
      const wide = ratioInterval(batches, 0.95);
      const narrow = ratioInterval(batches, 0.6);
      expect(wide?.low ?? 0).toBeLessThanOrEqual((narrow?.low ?? 0) + 1e-9);
      expect(wide?.high ?? 0).toBeGreaterThanOrEqual((narrow?.high ?? 0) - 1e-9);
      const alike = batches.map((each) => ({ got: 3 * each.took, took: each.took }));
      expect(ratioInterval(alike, 0.8)?.low).toBeCloseTo(3, 9);
    }),
  );
});

test('a yield or an effort that is no number is refused', () => {
  expect(() => ratioInterval([{ got: Number.NaN, took: 1 }], 0.8)).toThrow('Expected yield from');
  expect(() => ratioInterval([{ got: 1, took: -1 }], 0.8)).toThrow('Expected effort from 0');
  expect(() => ratioInterval(pairs, 0.4)).toThrow('Expected confidence from 0.5 to 0.99');
  expect(() => pairedDifference([1, 2, 3, 4, Number.NaN], 0.8)).toThrow('Expected difference');
  for (const confidence of [0.49, 0.991])
    expect(() => pairedDifference([1, 2, 3, 4, 6], confidence)).toThrow('Expected confidence');
  for (const confidence of [0.5, 0.99])
    expect(() => pairedDifference([1, 3, 2, 4, 3], confidence)).not.toThrow();
});

const runs: Readonly<Record<string, readonly number[]>> = {
  steady: [1.2, 0.8, 2.1, 1.9, 0.4, 1.6, 2.4, 1.1, 0.2, 1.8],
  alternating: [1, 3, 2, 4, 1, 3, 5, 2, 4, 1],
  slow: [0.5, 1, 0.9, 1.6, 1.2, 0.4, 0.2, 0.9, 1.4, 1.7, 1.1, 0.6, 0.8, 1.3],
};

test.for(
  truth('statistics/pairedDifference.csv', ['confidence', 'worth', 'mean', 'low', 'high'], ['run']),
)('a $run run of days is worth $worth and lies in $low to $high', (row) => {
  const found = pairedDifference(runs[row.run] ?? [], row.confidence);
  expect(found?.worth).toBeCloseTo(row.worth, 6);
  expect(found?.mean).toBeCloseTo(row.mean, 6);
  expect(found?.low).toBeCloseTo(row.low, 6);
  expect(found?.high).toBeCloseTo(row.high, 6);
});

test('a few days, or a week that only warmed up, say nothing', () => {
  expect(pairedDifference([1, 2, 3, 4], 0.8)).toBeNull();
  // By hand: deviations -3 … 3, products of neighbours 6+2+0+0+2+6 = 16 over 28: φ = 4/7, so seven
  // days are worth 7 x 3/11 = 1.9.
  expect(pairedDifference([1, 2, 3, 4, 5, 6, 7], 0.8)).toBeNull();
});

test('days that do not differ among themselves leave no doubt', () => {
  expect(pairedDifference([2, 2, 2, 2, 2], 0.9)).toEqual({
    n: 5,
    worth: 5,
    mean: 2,
    low: 2,
    high: 2,
  });
});

test('five days that are worth a little over three do say something', () => {
  // By hand: deviations -1.8 -1.8 0.2 3.2 0.2, products of neighbours 4.16 over 16.8: φ = 0.2476, so
  // 5 x 0.7524 / 1.2476 = 3.0153.
  expect(pairedDifference([1, 1, 3, 6, 3], 0.8)?.worth).toBeCloseTo(3.0153, 4);
});
