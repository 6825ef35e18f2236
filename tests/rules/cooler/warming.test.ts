import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  fitTimeConstant,
  produceTemperature,
  produceTime,
  warmingTime,
} from '../../../rules/cooler/index.ts';
import { HOUR, instant } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

const room = { outside: 20, air: 3, produce: 3 };
const readings = (hours: readonly number[], values: readonly number[]) =>
  hours.map((hour, index) => ({ t: instant(hour * HOUR), value: values[index] ?? Number.NaN }));

test.for(truth('cooler/warmingTime.csv', ['inside', 'outside', 'target', 'tau_h', 'hours']))(
  'from $inside to $target °C with $outside °C outside and $tau_h h takes $hours h',
  ({ inside, outside, target, tau_h, hours }) => {
    const time = warmingTime({ inside, outside, target, tauHours: tau_h });
    expect(Math.abs((time ?? 99) - hours)).toBeLessThan(6e-5);
  },
);

test('already over the target is no time; a cool day outside is never', () => {
  expect(warmingTime({ inside: 6, outside: 4, target: 5, tauHours: 6 })).toBe(0);
  expect(warmingTime({ inside: 3, outside: 4, target: 5, tauHours: 6 })).toBeNull();
  expect(warmingTime({ inside: 3, outside: 5, target: 5, tauHours: 6 })).toBeNull();
});

test('warmer outside, or a leakier room, never takes longer', () => {
  const outside = fc.double({ min: 6, max: 40, noNaN: true });
  const tau = fc.double({ min: 0.5, max: 50, noNaN: true });
  fc.assert(
    fc.property(outside, outside, tau, tau, (o1, o2, t1, t2) => {
      const time = (out: number, tauHours: number) =>
        warmingTime({ inside: 3, outside: out, target: 5, tauHours }) ?? Number.POSITIVE_INFINITY;
      return (
        time(Math.max(o1, o2), t1) <= time(Math.min(o1, o2), t1) &&
        time(o1, Math.min(t1, t2)) <= time(o1, Math.max(t1, t2))
      );
    }),
  );
});

test.for(
  truth('cooler/timeConstant.csv', ['outside', 'tau_h', 'error_h', 'r2'], ['hours', 'values']),
)('readings $values after $hours h with $outside °C outside: $tau_h h', (row) => {
  const list = (text: string) => text.split(' ').map(Number);
  const series = readings(list(row.hours), list(row.values));
  const fit = fitTimeConstant(series, row.outside);
  expect(fit.tauHours).toBeCloseTo(row.tau_h, 5);
  expect(fit.r2).toBeCloseTo(row.r2, 6);
  expect(fitTimeConstant(series, null)).toBeNull();
});

test('a time constant put in comes out again', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.5, max: 60, noNaN: true }), (tau) => {
      const hours = [0, 0.3, 0.7, 1, 1.6];
      const values = hours.map((hour) => 25 - 22 * Math.exp(-hour / tau));
      const fit = fitTimeConstant(readings(hours, values), 25);
      return Math.abs(fit.tauHours / tau - 1) < 1e-6 && fit.r2 > 0.999999;
    }),
  );
});

test('a room that cools has no time constant of warming', () => {
  expect(fitTimeConstant(readings([0, 1, 2], [5, 4, 3]), 20).tauHours).toBe(
    Number.POSITIVE_INFINITY,
  );
  expect(fitTimeConstant(readings([0, 1, 2], [5, 5, 5]), 20)).toEqual({
    tauHours: Number.POSITIVE_INFINITY,
    r2: 0,
  });
});

test('readings above outside, or too few, are refused in one sentence', () => {
  expect(() => fitTimeConstant(readings([0, 1, 2], [3, 21, 5]), 20)).toThrow(
    'Expected inside temperature from -60 to below 20 °C, got 21',
  );
  expect(() => fitTimeConstant(readings([0, 1], [3, 4]), 20)).toThrow(
    'Expected number of readings',
  );
  expect(() => fitTimeConstant(readings([1, 1, 1], [3, 4, 5]), 20)).toThrow(RangeError);
});

test.for(truth('cooler/produce.csv', ['tau_air_h', 'tau_produce_h', 'hours', 'produce_c']))(
  'after $hours h (air $tau_air_h h, produce $tau_produce_h h) produce is at $produce_c °C',
  ({ tau_air_h, tau_produce_h, hours, produce_c }) => {
    const taus = { tauHours: tau_air_h, produceTauHours: tau_produce_h };
    expect(produceTemperature({ ...room, ...taus }, hours)).toBeCloseTo(produce_c, 4);
  },
);

test.for(truth('cooler/produceTime.csv', ['tau_air_h', 'tau_produce_h', 'limit_c', 'hours']))(
  'produce (air $tau_air_h h, produce $tau_produce_h h) reaches $limit_c °C in $hours h',
  ({ tau_air_h, tau_produce_h, limit_c, hours }) => {
    const taus = { tauHours: tau_air_h, produceTauHours: tau_produce_h };
    expect(produceTime({ ...room, ...taus, limit: limit_c })).toBeCloseTo(hours, 4);
  },
);

test('produce is never ahead of the air that warms it', () => {
  const tau = fc.double({ min: 0.5, max: 30, noNaN: true });
  fc.assert(
    fc.property(
      tau,
      tau,
      fc.double({ min: 0, max: 48, noNaN: true }),
      (tauHours, produceTauHours, h) => {
        const air = 20 - 17 * Math.exp(-h / tauHours);
        const produce = produceTemperature({ ...room, tauHours, produceTauHours }, h);
        return produce <= air + 1e-6 && produce >= 3 - 1e-6;
      },
    ),
  );
});

test('produce that is warm already, or a cold day, needs no search', () => {
  const taus = { tauHours: 6, produceTauHours: 2.5 };
  expect(produceTime({ ...room, produce: 7, ...taus, limit: 5 })).toBe(0);
  expect(produceTime({ ...room, outside: 4, ...taus, limit: 5 })).toBeNull();
});

test('a time constant is above 0', () => {
  expect(() => warmingTime({ inside: 3, outside: 20, target: 5, tauHours: 0 })).toThrow(
    'Expected time constant from 0.01 to 10000 h, got 0',
  );
  expect(() => produceTemperature({ ...room, tauHours: 6, produceTauHours: 2 }, -1)).toThrow(
    RangeError,
  );
});
