import { createRequire } from 'node:module';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  dewPointOf,
  humidityOf,
  saturationPressure,
  vapourDensity,
  vapourPressure,
} from '../../simulators/moistAir.ts';

// It has no types of its own, and is loaded in a way that asks for none.
const psychrolib = createRequire(import.meta.url)('psychrolib');

// Vapour pressure of water, hPa: CRC Handbook of Chemistry and Physics, table "Vapor pressure of
// water from 0 to 370 °C" (from memory). Buck 1981 promises 0.06 %; the table is rounded.
const table = [
  [0, 6.113],
  [5, 8.726],
  [10, 12.281],
  [15, 17.056],
  [20, 23.388],
  [25, 31.69],
  [30, 42.455],
  [40, 73.814],
] as const;

test.for(table)('at %d °C the vapour pressure agrees with the handbook to 0.1 %%', ([t, hPa]) => {
  expect(Math.abs(saturationPressure(t) / hPa - 1)).toBeLessThan(0.001);
});

test('above freezing the curve agrees with the ASHRAE form of psychrolib to 0.1 %', () => {
  psychrolib.SetUnitSystem(psychrolib.SI);
  for (let t = 0.5; t <= 45; t += 0.5) {
    const outside = psychrolib.GetSatVapPres(t) / 100;
    expect(Math.abs(saturationPressure(t) / outside - 1)).toBeLessThan(0.001);
  }
});

test('the dew point of saturated air is its temperature', () => {
  fc.assert(
    fc.property(fc.double({ min: -25, max: 45, noNaN: true }), (t) => {
      expect(dewPointOf(saturationPressure(t))).toBeCloseTo(t, 8);
      expect(humidityOf(saturationPressure(t), t)).toBeCloseTo(100, 8);
    }),
  );
});

test('vapour density and pressure are each other read backwards', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 60, noNaN: true }),
      fc.double({ min: -20, max: 45, noNaN: true }),
      (hPa, t) => {
        expect(vapourPressure(vapourDensity(hPa, t), t)).toBeCloseTo(hPa, 9);
      },
    ),
  );
});

test('saturated air of 20 °C holds 17.3 g/m³', () => {
  // CRC Handbook, table "Density of saturated water vapour": 17.3 g/m³ at 20 °C (from memory).
  expect(1000 * vapourDensity(saturationPressure(20), 20)).toBeCloseTo(17.3, 1);
});
