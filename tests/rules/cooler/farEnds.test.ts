import { expect, test } from 'vitest';
import { lifeUsedCooling, produceTime } from '../../../rules/cooler/index.ts';

// Far ends of what the formulas take, where a search or a sum could give up without saying so.

test('produce under very long time constants gets there when Newton’s law says so', () => {
  // Air follows with 10,000 h and produce with 1 h: in the end the air alone counts, whose time is
  // 10,000 ln(140 / 0.001) = 118,494 h (worked out by hand), and produce lags by its own hour.
  const hours = produceTime({
    outside: 80,
    air: -60,
    produce: -60,
    limit: 79.999,
    tauHours: 10_000,
    produceTauHours: 1,
  });
  expect(Math.abs((hours ?? 0) - 118_495)).toBeLessThan(1);
});

test('a crate that cools in minutes uses up the life of its room for the rest of a long time', () => {
  // 35 °C to 0 °C with a constant of 0.01 h: 10,000 h at the room's rate of 1 and, for the cooling,
  // 0.01 h times the integral of (10^(3.5 x) - 1) / x over x from 0 to 1: 460.297 (two million steps of Simpson's rule in Python).
  const used = lifeUsedCooling({
    from: 35,
    room: 0,
    produceTauHours: 0.01,
    hours: 10_000,
    q10: 10,
    reference: 0,
  });
  expect(Math.abs(used - 10_004.603)).toBeLessThan(0.01);
});
