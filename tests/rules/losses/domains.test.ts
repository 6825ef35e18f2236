import { expect, test } from 'vitest';
import { lossAssociation, lossMoney } from '../../../rules/losses/index.ts';

test('ten thousand tonnes may be lost, and one per cent more may not', () => {
  expect(lossMoney(10_000_000, 2)).toBe(20_000_000);
  expect(() => lossMoney(10_100_000, 2)).toThrow(
    new RangeError('Expected weight lost from 0 to 10000000 kg, got 10100000'),
  );
});

test.for([
  [500, 3],
  [3, 500],
  [501, 3],
  [3, 501],
  [501, 501],
] as const)(
  '%d exposed lots against %d: the least chance is told up to 500',
  ([exposed, others]) => {
    const facts = {
      exposedLost: 1,
      exposedKept: exposed - 1,
      otherLost: 1,
      otherKept: others - 1,
      lots: exposed + others,
      unknownLots: 0,
    };
    const { leastP } = lossAssociation(facts);
    // By hand: one table of 503 x 502 x 501 / (3 x 2 x 1) = 21,084,251.
    if (Math.max(exposed, others) > 500) expect(leastP).toBeNull();
    else expect((leastP ?? 0) * 21_084_251).toBeCloseTo(1, 9);
  },
);
