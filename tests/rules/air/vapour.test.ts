import fc from 'fast-check';
import psychrolib from 'psychrolib';
import { expect, test } from 'vitest';
import {
  absoluteHumidity,
  humidityRatio,
  saturationOverIce,
  saturationVapourPressure,
  vapourPressure,
  vapourPressureDeficit,
} from '../../../rules/air/index.ts';
import { celsius, percent } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

psychrolib.SetUnitSystem(psychrolib.SI);
const anyAir = fc.double({ min: -30, max: 60, noNaN: true }).map(celsius);
const anyHumidity = fc.double({ min: 0.1, max: 100, noNaN: true }).map(percent);

test.for(truth('air/saturation.csv', ['air_c', 'es_kpa']))(
  'air of $air_c °C is saturated at $es_kpa kPa',
  ({ air_c, es_kpa }) => {
    expect(Math.abs(saturationVapourPressure(celsius(air_c)) - es_kpa)).toBeLessThan(6e-5);
  },
);

test('saturation agrees with psychrolib to 0.15 % from 1 to 45 °C', () => {
  for (let air = 1; air <= 45; air += 1) {
    const theirs = psychrolib.GetSatVapPres(air) / 1000;
    expect(Math.abs(saturationVapourPressure(celsius(air)) / theirs - 1)).toBeLessThan(0.0015);
  }
});

test('saturation over ice agrees with psychrolib to 0.2 % down to -10 °C, 0.5 % to -20 °C', () => {
  for (let air = -20; air < 0; air += 1) {
    const theirs = psychrolib.GetSatVapPres(air) / 1000;
    expect(Math.abs(saturationOverIce(celsius(air)) / theirs - 1)).toBeLessThan(
      air < -10 ? 0.005 : 0.002,
    );
  }
});

test('ice and water agree at 0 °C, and below it ice holds less', () => {
  expect(saturationOverIce(celsius(0))).toBe(saturationVapourPressure(celsius(0)));
  fc.assert(
    fc.property(fc.double({ min: -30, max: -0.01, noNaN: true }).map(celsius), (t) => {
      return saturationOverIce(t) < saturationVapourPressure(t);
    }),
  );
});

test('there is no ice above 0 °C', () => {
  expect(() => saturationOverIce(celsius(5))).toThrow('Expected ice temperature from -45 to 0 °C');
});

test('absolute humidity and humidity ratio agree with psychrolib', () => {
  for (let air = 1; air <= 40; air += 3) {
    for (let rh = 10; rh <= 100; rh += 15) {
      const theirs = psychrolib.GetHumRatioFromRelHum(air, rh / 100, 101_325);
      const ours = humidityRatio(celsius(air), percent(rh));
      expect(Math.abs(ours / theirs - 1)).toBeLessThan(0.0017);
      // Ideal gas: vapour density is w p / ((0.621945 + w) Rv T), with Rv of 461.52 J/(kg K).
      const density = (1000 * theirs * 101_325) / ((0.621945 + theirs) * 461.52 * (air + 273.15));
      expect(Math.abs(absoluteHumidity(celsius(air), percent(rh)) / density - 1)).toBeLessThan(
        0.0017,
      );
    }
  }
});

test('10 °C at 90 % holds 8.457 g/m³ and lacks 0.1228 kPa', () => {
  // Computed apart from this code; 8.457 also from psychrolib 1.1.1.
  expect(absoluteHumidity(celsius(10), percent(90))).toBeCloseTo(8.457, 3);
  expect(vapourPressureDeficit(celsius(10), percent(90))).toBeCloseTo(0.1228, 4);
  expect(vapourPressureDeficit(celsius(35), percent(40))).toBeCloseTo(3.3736, 4);
});

test('what air holds and what it lacks add up to saturation', () => {
  fc.assert(
    fc.property(anyAir, anyHumidity, (t, rh) => {
      const sum = vapourPressure(t, rh) + vapourPressureDeficit(t, rh);
      return Math.abs(sum - saturationVapourPressure(t)) < 1e-9;
    }),
  );
});

test('warmer air holds more at saturation', () => {
  fc.assert(
    fc.property(anyAir, anyAir, (a, b) => {
      return (
        a === b ||
        a < b === saturationVapourPressure(a) < saturationVapourPressure(b) ||
        Math.abs(a - b) < 1e-9
      );
    }),
  );
});

test('a damp probe that overshoots to 105 % is read as saturated', () => {
  expect(vapourPressure(celsius(20), percent(103))).toBe(saturationVapourPressure(celsius(20)));
  expect(vapourPressureDeficit(celsius(20), percent(105))).toBe(0);
});

test('humidities and temperatures no probe can mean are refused in one plain sentence', () => {
  expect(() => vapourPressure(celsius(20), percent(0))).toThrow(
    'Expected relative humidity from above 0 to 105 %, got 0',
  );
  expect(() => vapourPressure(celsius(20), percent(140))).toThrow(RangeError);
  expect(() => vapourPressureDeficit(celsius(20), percent(Number.NaN))).toThrow(RangeError);
  expect(() => absoluteHumidity(celsius(85), percent(50))).toThrow(
    'Expected air temperature from -30 to 60 °C, got 85',
  );
  expect(() => humidityRatio(celsius(20), percent(50), 1013)).toThrow(
    'Expected air pressure from 55 to 110 kPa, got 1013',
  );
});
