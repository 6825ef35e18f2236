import fc from 'fast-check';
import { expect, test } from 'vitest';
import { baseTemperature, rateIntercept } from '../../../rules/heat/index.ts';
import { truth } from '../../truth/index.ts';

const sowings = (temperatures: readonly number[], days: readonly number[]) =>
  temperatures.map((temperature, index) => ({ temperature, days: days[index] ?? Number.NaN }));
const sets = {
  1: sowings([25, 20, 15, 10], [6, 11, 16, 21]),
  2: sowings([24, 19, 15, 11], [7, 10, 15, 27]),
};

test.for(
  truth('heat/baseTemperature.csv', [
    'set',
    'least_sd_dd',
    'least_sd_days',
    'cv_days',
    'regression',
    'rate',
  ]),
)('set $set of four sowings, five methods', (row) => {
  const set = sets[row.set as keyof typeof sets];
  const base = baseTemperature(set);
  expect(base.leastSdDegreeDays).toBeCloseTo(row.least_sd_dd, 4);
  expect(base.leastSdDays).toBeCloseTo(row.least_sd_days, 4);
  expect(base.cvDays).toBeCloseTo(row.cv_days, 4);
  expect(base.regression).toBeCloseTo(row.regression, 4);
  expect(rateIntercept(set)?.base).toBeCloseTo(row.rate, 4);
});

test.for(truth('heat/germination.csv', ['from', 'base', 'units', 'r2'], ['crop', 'days']))(
  '$crop germinates above $base °C and needs $units °C d',
  (row) => {
    const days = row.days.split(' ').map(Number);
    const fit = rateIntercept(
      sowings(
        days.map((_, index) => row.from + 5 * index),
        days,
      ),
    );
    expect(fit?.base).toBeCloseTo(row.base, 5);
    expect(fit?.degreeDays).toBeCloseTo(row.units, 5);
    expect(fit?.r2).toBeCloseTo(row.r2, 6);
  },
);

test('sowings made with one base give it back by every method', () => {
  const base = fc.double({ min: 0, max: 8, noNaN: true });
  const units = fc.double({ min: 60, max: 900, noNaN: true });
  fc.assert(
    fc.property(base, units, (tb, sum) => {
      const set = [12, 15, 18, 22, 26].map((temperature) => ({
        temperature,
        days: sum / (temperature - tb),
      }));
      const found = [...Object.values(baseTemperature(set)), rateIntercept(set)?.base ?? null];
      return found.every((value) => value !== null && Math.abs(value - tb) < 1e-4);
    }),
  );
});

test('sowings all alike do not tell a base', () => {
  const same = sowings([15, 15, 15], [20, 20, 20]);
  expect(baseTemperature(same)).toEqual({
    leastSdDegreeDays: null,
    leastSdDays: null,
    cvDays: null,
    regression: null,
  });
  expect(rateIntercept(same)).toBeNull();
});

test('two sowings are too few', () => {
  expect(() => baseTemperature(sowings([15, 20], [20, 15]))).toThrow(
    'Expected number of sowings from 3',
  );
  expect(() => rateIntercept(sowings([15, 20, 25], [20, 0, 10]))).toThrow(RangeError);
});
