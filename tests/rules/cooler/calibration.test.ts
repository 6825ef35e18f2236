import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  calibrated,
  displayUnit,
  fahrenheit,
  humidityProbePasses,
  offsetCalibration,
  type Salt,
  saltHumidity,
  saltHumidityFit,
  toFahrenheit,
  twoPointCalibration,
  unitSwapped,
} from '../../../rules/cooler/index.ts';
import { truth } from '../../truth/index.ts';

const points = [
  'raw1',
  'reference1',
  'raw2',
  'reference2',
  'slope',
  'intercept',
  'raw',
  'value',
] as const;
test.for(truth('cooler/calibration.csv', points))(
  '$raw1 for $reference1 and $raw2 for $reference2 turn $raw into $value',
  ({ slope, intercept, raw, value, ...pair }) => {
    const two = twoPointCalibration(pair);
    expect(two.slope).toBeCloseTo(slope, 7);
    expect(two.intercept).toBeCloseTo(intercept, 6);
    expect(two.doubts).toEqual([]);
    expect(calibrated(raw, two)).toBeCloseTo(value, 6);
  },
);

test('the offset alone turns 3.6 into 3.2', () => {
  expect(calibrated(3.6, offsetCalibration(0.4))).toBeCloseTo(3.2, 12);
  expect(calibrated(null, offsetCalibration(0.4))).toBeNull();
  expect(offsetCalibration(24, 25)).toEqual({ slope: 1, intercept: 1 });
});

test('points too near, or a slope too far from 1, are doubted', () => {
  const points = (reference2: number, slope: number) =>
    twoPointCalibration({ raw1: 0, reference1: 0, raw2: reference2 / slope, reference2 }).doubts;
  expect(points(14.9, 1)).toEqual(['too-near']);
  expect(points(15.1, 1)).toEqual([]);
  expect(points(25, 1.031)).toEqual(['slope']);
  expect(points(25, 1.029)).toEqual([]);
  expect(points(25, 0.969)).toEqual(['slope']);
  expect(points(25, 0.971)).toEqual([]);
  expect(() => twoPointCalibration({ raw1: 1, reference1: 0, raw2: 1, reference2: 20 })).toThrow(
    'Expected raw values that differ, got 1 twice',
  );
});

test('a two-point correction gives back both its references', () => {
  const raw = fc.double({ min: -20, max: 60, noNaN: true });
  fc.assert(
    fc.property(raw, raw, (raw1, raw2) => {
      if (Math.abs(raw1 - raw2) < 1) return true;
      const two = twoPointCalibration({ raw1, reference1: 0, raw2, reference2: 25.2 });
      return (
        Math.abs(calibrated(raw1, two)) < 1e-9 && Math.abs(calibrated(raw2, two) - 25.2) < 1e-9
      );
    }),
  );
});

test.for(truth('cooler/saltHumidity.csv', ['temperature', 'humidity'], ['salt']))(
  '$salt at $temperature °C holds $humidity %',
  ({ temperature, humidity, salt }) => {
    expect(saltHumidity(salt as Salt, temperature)).toBeCloseTo(humidity, 9);
  },
);

test.for(truth('cooler/saltHumidityFit.csv', ['temperature', 'humidity'], ['salt']))(
  '$salt at $temperature °C holds $humidity % by the fit, and agrees with the table',
  ({ temperature, humidity, salt }) => {
    const fitted = saltHumidityFit(salt as Salt, temperature);
    expect(fitted).toBeCloseTo(humidity, 5);
    expect(Math.abs(fitted - saltHumidity(salt as Salt, temperature))).toBeLessThan(0.25);
  },
);

test('a probe passes within 3 % over NaCl and 5 % over K2SO4', () => {
  expect(humidityProbePasses('NaCl', 78.4, 20)).toBe(true);
  expect(humidityProbePasses('NaCl', 78.5, 20)).toBe(false);
  expect(humidityProbePasses('K2SO4', 92.65, 20)).toBe(true);
  expect(humidityProbePasses('K2SO4', 92.5, 20)).toBe(false);
  expect(saltHumidity('NaCl', null)).toBeNull();
});

test.for(truth('cooler/fahrenheit.csv', ['f', 'c']))('$f °F are $c °C', ({ f, c }) => {
  expect(fahrenheit(f)).toBeCloseTo(c, 5);
  expect(toFahrenheit(c)).toBeCloseTo(f, 5);
});

test.for(truth('cooler/displayUnit.csv', ['shown', 'median'], ['danger', 'unit']))(
  'a display of $shown beside a probe at $median °C is in $unit (danger: $danger)',
  ({ shown, median, danger, unit }) => {
    expect(displayUnit(shown, median)).toEqual({ unit, danger: danger === 'yes' });
  },
);

test('in a cool room no number is taken for both', () => {
  const median = fc.double({ min: 0, max: 10, noNaN: true });
  fc.assert(
    fc.property(fc.double({ min: -20, max: 80, noNaN: true }), median, (shown, probe) => {
      const { unit } = displayUnit(shown, probe);
      const mayBeC = shown >= -3 && shown <= 13;
      const mayBeF = shown >= 26.6 && shown <= 55.4;
      return unit === 'C' ? mayBeC : unit === 'F' ? mayBeF : true;
    }),
  );
  expect(displayUnit(3, null)).toBeNull();
});

test('a set value that goes from 3 to 37 or 39, or back, is the same wish in the other unit', () => {
  expect([37, 38, 39].map((after) => unitSwapped(3, after))).toEqual([true, true, true]);
  expect(unitSwapped(38, 3)).toBe(true);
  expect(unitSwapped(3, 4)).toBe(false);
  // -15 °C is 5 °F: 20 apart; nearer together a change of mind looks the same.
  expect(unitSwapped(-14.9, 5.18)).toBe(true);
  expect(unitSwapped(-15.2, 4.64)).toBe(false);
  expect(unitSwapped(3, 39.07)).toBe(true);
  expect(unitSwapped(3, 39.13)).toBe(false);
});
