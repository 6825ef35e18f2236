import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  normalCdf,
  normalQuantile,
  poissonCdf,
  poissonChance,
  poissonLimits,
} from '../../../rules/statistics/index.ts';
import { truth } from '../../truth/index.ts';

test.for(truth('statistics/poisson.csv', ['events', 'mean', 'exactly', 'at_most']))(
  '$events events where $mean are expected: $exactly, at most $at_most',
  ({ events, mean, exactly, at_most }) => {
    expect(poissonChance(events, mean) / exactly).toBeCloseTo(1, 8);
    expect(poissonCdf(events, mean) / at_most).toBeCloseTo(1, 8);
  },
);

test.for(truth('statistics/poissonLimits.csv', ['events', 'low', 'high']))(
  '$events events: the true mean lies from $low to $high',
  ({ events, low, high }) => {
    const [from, to] = poissonLimits(events);
    expect(from).toBeCloseTo(low, 7);
    expect(to).toBeCloseTo(high, 7);
  },
);

test('chances of each count add up to that of at most', () => {
  const mean = fc.double({ min: 0, max: 60, noNaN: true });
  fc.assert(
    fc.property(fc.nat(80), mean, (events, expected) => {
      let sum = 0;
      for (let k = 0; k <= events; k += 1) sum += poissonChance(k, expected);
      return Math.abs(sum - poissonCdf(events, expected)) < 1e-11;
    }),
  );
});

test('limits hold the count and widen with confidence', () => {
  fc.assert(
    fc.property(fc.nat(200), (events) => {
      const [low, high] = poissonLimits(events);
      const [wideLow, wideHigh] = poissonLimits(events, 0.99);
      return wideLow <= low && low <= events && events < high && high < wideHigh;
    }),
  );
});

test('half an event and less than none are refused, and unknown stays unknown', () => {
  expect(() => poissonLimits(0.5)).toThrow('Expected whole events');
  expect(() => poissonCdf(1, -1)).toThrow('Expected mean number of events from 0');
  expect(poissonLimits(null)).toBeNull();
  expect(poissonCdf(2, null)).toBeNull();
  expect(poissonChance(0, 0)).toBe(1);
  expect(poissonChance(1, 0)).toBe(0);
});

test.for(truth('statistics/normalQuantile.csv', ['p', 'z']))(
  'a normal value is below $z with chance $p, turned round',
  ({ p, z }) => {
    expect(normalQuantile(p)).toBeCloseTo(z, 8);
    expect(normalCdf(normalQuantile(p))).toBeCloseTo(p, 12);
  },
);
