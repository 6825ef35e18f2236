import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  autocorrelation,
  cusum,
  effectiveSampleSize,
  ewmaAutocorrelationFactor,
  ewmaChart,
} from '../../../rules/statistics/index.ts';
import { truth } from '../../truth/index.ts';

const nist = truth('statistics/ewma.csv', ['sample', 'x', 'z']);
const chart = { target: 50, sd: 2.0539, lambda: 0.3 };
const samples = fc.array(fc.double({ min: -1e3, max: 1e3, noNaN: true }), { maxLength: 40 });

test('the handbook EWMA runs as printed and stays within its limits', () => {
  const points = ewmaChart(
    nist.map(({ x }) => x),
    chart,
  );
  for (const [index, { z }] of nist.entries()) expect(points[index]?.z).toBeCloseTo(z, 5);
  expect(points.map(({ signal }) => signal)).not.toContain(true);
  expect(points.at(-1)?.high).toBeCloseTo(52.5884, 4);
  expect(points.at(-1)?.low).toBeCloseTo(47.4116, 4);
});

test('limits at the start are narrower: 51.8485 above at the first sample', () => {
  // 50 + 3 x 2.0539 x 0.3: the first z is 0.3 x, so its spread is 0.3 of a sample's.
  const points = ewmaChart(
    nist.map(({ x }) => x),
    { ...chart, startUp: true },
  );
  expect(points[0]?.high).toBeCloseTo(51.8485, 4);
  expect(points[0]?.low).toBeCloseTo(48.1515, 4);
  expect(points.at(-1)?.high).toBeCloseTo(52.5884, 3);
});

test('a value far out is a signal, on either side', () => {
  expect(ewmaChart([70], chart)[0]?.signal).toBe(true);
  expect(ewmaChart([30], chart)[0]?.signal).toBe(true);
});

test('a missing sample leaves the mean as it is; three in a row begin again and say so', () => {
  const points = ewmaChart([55, null, null, null, null, 50], chart);
  expect(points.map(({ z }) => z)).toEqual([51.5, 51.5, 51.5, 55, 55, 53.5]);
  expect(points.map(({ restarted }) => restarted)).toEqual([
    false,
    false,
    false,
    true,
    false,
    false,
  ]);
  expect(points.map(({ signal }) => signal)).toEqual([false, null, null, null, null, true]);
  expect(ewmaChart([null, null, null, 50], chart).at(-1)?.z).toBe(50);
});

test('with weight 1 the mean is the sample', () => {
  fc.assert(
    fc.property(samples, (list) => {
      const points = ewmaChart(list, { target: 0, sd: 1, lambda: 1 });
      return points.every(({ z }, index) => z === list[index]);
    }),
  );
});

test('the mean never leaves the range of target and samples', () => {
  fc.assert(
    fc.property(samples, fc.double({ min: 0.01, max: 1, noNaN: true }), (list, lambda) => {
      const low = Math.min(0, ...list) - 1e-9;
      const high = Math.max(0, ...list) + 1e-9;
      return ewmaChart(list, { target: 0, sd: 1, lambda }).every(({ z }) => z >= low && z <= high);
    }),
  );
});

test('a weight of none, no spread, and a sample that is no number are refused', () => {
  expect(() => ewmaChart([1], { ...chart, lambda: 0 })).toThrow('Expected lambda from 5e-324 to 1');
  expect(() => ewmaChart([1], { ...chart, lambda: 1.1 })).toThrow(RangeError);
  expect(() => ewmaChart([1], { ...chart, sd: 0 })).toThrow('Expected standard deviation');
  expect(() => ewmaChart([Number.NaN], chart)).toThrow('Expected sample');
});

const shift = truth('statistics/cusum.csv', ['sample', 'x', 'high', 'low']);
const settings = { target: 325, slack: 0.3175, limit: 4.1959 };

test('the handbook CUSUM signals at sample 14, and the shift began at 13', () => {
  const { points, firstSignal, began } = cusum(
    shift.map(({ x }) => x),
    settings,
  );
  for (const [index, row] of shift.entries()) {
    expect(points[index]?.high).toBeCloseTo(row.high, 8);
    expect(points[index]?.low).toBeCloseTo(row.low, 8);
  }
  expect(firstSignal).toBe(13);
  expect(began).toBe(12);
  expect(points[12]?.signal).toBeNull();
  expect(points[13]?.signal).toBe('high');
});

test('turned upside down, it signals low at the same sample', () => {
  const down = cusum(
    shift.map(({ x }) => 650 - x),
    settings,
  );
  expect([down.firstSignal, down.began]).toEqual([13, 12]);
  expect(down.points[13]?.signal).toBe('low');
});

test('missing samples keep the sums, three in a row clear them', () => {
  const { points, firstSignal } = cusum([3, null, 3, null, null, null, 3], {
    target: 0,
    slack: 1,
    limit: 10,
  });
  expect(points.map(({ high }) => high)).toEqual([2, 2, 4, 4, 4, 0, 2]);
  expect(points[5]?.restarted).toBe(true);
  expect(firstSignal).toBeNull();
});

test('sums are never below 0, and values on target never signal', () => {
  fc.assert(
    fc.property(samples, (list) =>
      cusum(list, { target: 0, slack: 0.5, limit: 4 }).points.every(
        ({ high, low }) => high >= 0 && low >= 0,
      ),
    ),
  );
  expect(cusum(new Array(500).fill(325), settings).firstSignal).toBeNull();
  expect(() => cusum([1], { ...settings, slack: -1 })).toThrow('Expected slack from 0');
  expect(() => cusum([1], { ...settings, limit: 0 })).toThrow('Expected decision limit');
});

test.for(truth('statistics/ewmaAutocorrelation.csv', ['lambda', 'phi', 'factor']))(
  'with weight $lambda and correlation $phi the limits are $factor times too narrow',
  ({ lambda, phi, factor }) => {
    expect(ewmaAutocorrelationFactor(lambda, phi)).toBeCloseTo(factor, 6);
  },
);

test.for(truth('statistics/effectiveSize.csv', ['n', 'phi', 'worth']))(
  '$n samples that follow each other at $phi are worth $worth',
  ({ n, phi, worth }) => {
    expect(effectiveSampleSize(n, phi)).toBeCloseTo(worth, 6);
  },
);

test('an unknown number of samples is worth an unknown number', () => {
  expect(effectiveSampleSize(null, 0.95)).toBeNull();
});

test('the correlation with the sample before is 0.26483', () => {
  // NumPy: sum of products of neighbours over sum of squares, both about the mean.
  const list = [0.31, 0.52, 0.49, 0.8, 0.66, 0.12, 0.05, 0.33, 0.41, 0.9];
  expect(autocorrelation(list)).toBeCloseTo(0.2648338706590705, 12);
  expect(autocorrelation([2, 2, 2])).toBeNull();
  expect(() => autocorrelation([1, 2])).toThrow('Expected samples from 3');
});
