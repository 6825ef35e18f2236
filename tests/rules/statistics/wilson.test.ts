import fc from 'fast-check';
import { expect, test } from 'vitest';
import { wilson } from '../../../rules/statistics/index.ts';
import { truth } from '../../truth/index.ts';

test.for(truth('statistics/wilson.csv', ['successes', 'n', 'low', 'high']))(
  '$successes of $n lost: the share lies from $low to $high',
  ({ successes, n, low, high }) => {
    const [from, to] = wilson(successes, n);
    expect(Math.abs(from - low)).toBeLessThan(6e-5);
    expect(Math.abs(to - high)).toBeLessThan(6e-5);
  },
);

test('the interval holds the share seen, inside 0..1, and widens with confidence', () => {
  const counts = fc.tuple(fc.nat(500), fc.nat(500)).filter(([a, b]) => a + b > 0);
  fc.assert(
    fc.property(counts, ([kept, lost]) => {
      const n = kept + lost;
      const [low, high] = wilson(lost, n);
      const [wideLow, wideHigh] = wilson(lost, n, 0.99);
      const share = lost / n;
      return (
        low >= 0 && low <= share && share <= high && high <= 1 && wideLow <= low && wideHigh >= high
      );
    }),
  );
});

test('no trials have no interval, and half a success is none', () => {
  expect(() => wilson(0, 0)).toThrow('Expected trials from 1');
  expect(() => wilson(3, 2)).toThrow(RangeError);
  expect(() => wilson(0.5, 2)).toThrow('Expected whole successes from 0 to 2, got 0.5');
});
