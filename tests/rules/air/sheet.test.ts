import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  absoluteHumidity,
  dewPoint,
  dewPointDepression,
  dewPointRange,
  dryingComfort,
  frostPoint,
  humidityAtDepression,
  humidityForDeficit,
  humidityRatio,
  knownAir,
  knownDewPoint,
  saltCheck,
  saturationOverIce,
  saturationVapourPressure,
  vapourPressure,
  vapourPressureDeficit,
  wetBulb,
} from '../../../rules/air/index.ts';
import { celsius, kelvin, kilopascal, percent } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

test.for(truth('air/dewPointSheet.csv', ['air_c', 'humidity_pct', 'dew_c', 'depression_k']))(
  '$air_c °C $humidity_pct % has its dew point at $dew_c °C',
  (row) => {
    const [t, rh] = [celsius(row.air_c), percent(row.humidity_pct)];
    expect(Math.abs(dewPoint(t, rh) - row.dew_c)).toBeLessThan(6e-5);
    expect(Math.abs(dewPointDepression(t, rh) - row.depression_k)).toBeLessThan(6e-5);
    const back = humidityAtDepression(t, dewPointDepression(t, rh));
    expect(back).toBeCloseTo(row.humidity_pct, 9);
  },
);

test.for(truth('air/deficit.csv', ['air_c', 'humidity_pct', 'deficit_kpa']))(
  '$air_c °C $humidity_pct % lacks $deficit_kpa kPa',
  (row) => {
    const [t, rh] = [celsius(row.air_c), percent(row.humidity_pct)];
    expect(Math.abs(vapourPressureDeficit(t, rh) - row.deficit_kpa)).toBeLessThan(6e-6);
  },
);

test.for(truth('air/moisture.csv', ['air_c', 'humidity_pct', 'absolute_g_m3', 'ratio_g_kg']))(
  '$air_c °C $humidity_pct % holds $absolute_g_m3 g/m³, $ratio_g_kg g/kg',
  (row) => {
    const [t, rh] = [celsius(row.air_c), percent(row.humidity_pct)];
    expect(Math.abs(absoluteHumidity(t, rh) - row.absolute_g_m3)).toBeLessThan(1e-4);
    expect(Math.abs(1000 * humidityRatio(t, rh) - row.ratio_g_kg)).toBeLessThan(1e-4);
  },
);

test.for(truth('air/ice.csv', ['surface_c', 'ice_kpa', 'water_kpa']))(
  'at $surface_c °C ice holds $ice_kpa kPa and water $water_kpa kPa',
  (row) => {
    expect(saturationOverIce(celsius(row.surface_c))).toBeCloseTo(row.ice_kpa, 5);
    expect(saturationVapourPressure(celsius(row.surface_c))).toBeCloseTo(row.water_kpa, 5);
  },
);

test.for(
  truth('air/humidityForDeficit.csv', [
    'air_c',
    'at_200_pa',
    'at_300_pa',
    'at_500_pa',
    'at_800_pa',
  ]),
)('humidity at which air of $air_c °C lacks 0.2, 0.3, 0.5 and 0.8 kPa', (row) => {
  for (const [deficit, humidity] of [
    [0.2, row.at_200_pa],
    [0.3, row.at_300_pa],
    [0.5, row.at_500_pa],
    [0.8, row.at_800_pa],
  ] as const) {
    const got = humidityForDeficit(celsius(row.air_c), kilopascal(deficit));
    expect(Math.abs(got - humidity)).toBeLessThan(6e-5);
  }
});

test.for(truth('air/humidityAtDepression.csv', ['air_c', 'humidity_pct']))(
  '2 K of depression at $air_c °C is $humidity_pct %',
  ({ air_c, humidity_pct }) => {
    const got = humidityAtDepression(celsius(air_c), kelvin(2));
    expect(Math.abs(got - humidity_pct)).toBeLessThan(6e-5);
  },
);

test.for(
  truth('air/dewPointRange.csv', ['humidity_error', 'temperature_error', 'lowest_c', 'highest_c']),
)('± $humidity_error % and ± $temperature_error K leave $lowest_c to $highest_c °C', (row) => {
  const [low, high] = dewPointRange(
    celsius(15),
    percent(90),
    row.humidity_error,
    kelvin(row.temperature_error),
  );
  expect(low).toBeCloseTo(row.lowest_c, 4);
  expect(high).toBeCloseTo(row.highest_c, 4);
});

test('a range of dew points holds the reading’s own, and stays within what humidity can be', () => {
  const t = fc.double({ min: -9, max: 39, noNaN: true }).map(celsius);
  const rh = fc.double({ min: 2, max: 100, noNaN: true }).map(percent);
  fc.assert(
    fc.property(t, rh, fc.double({ min: 0, max: 20, noNaN: true }), (air, humidity, error) => {
      const [low, high] = dewPointRange(air, humidity, error, kelvin(error));
      const dew = dewPoint(air, humidity);
      return low <= dew && dew <= high;
    }),
  );
  // Saturated air under an error of 2 %: at most its own temperature. Dry air: at least that of 1 %.
  expect(dewPointRange(celsius(15), percent(100), 2, kelvin(0))[1]).toBe(15);
  expect(dewPointRange(celsius(15), percent(2), 20, kelvin(0))[0]).toBe(
    dewPoint(celsius(15), percent(1)),
  );
  expect(() => dewPointRange(celsius(15), percent(90), 20.1, kelvin(0))).toThrow(RangeError);
  expect(() => dewPointRange(celsius(15), percent(90), 0, kelvin(20.1))).toThrow(RangeError);
  expect(() => dewPointRange(celsius(15), percent(90), 20, kelvin(20))).not.toThrow();
});

test('humidity for a deficit is the deficit turned round', () => {
  const t = fc.double({ min: -30, max: 60, noNaN: true }).map(celsius);
  const rh = fc.double({ min: 1, max: 100, noNaN: true }).map(percent);
  fc.assert(
    fc.property(t, rh, (air, humidity) => {
      const back = humidityForDeficit(air, vapourPressureDeficit(air, humidity));
      return Math.abs(back - humidity) < 1e-6;
    }),
  );
  expect(() => humidityForDeficit(celsius(5), kilopascal(0.88))).toThrow(
    'Expected vapour pressure deficit from 0 to',
  );
});

test('depressions from 0 to 60 K', () => {
  expect(humidityAtDepression(celsius(60), kelvin(60))).toBeCloseTo(3.06, 1);
  expect(humidityAtDepression(celsius(20), kelvin(0))).toBe(100);
  expect(() => humidityAtDepression(celsius(40), kelvin(60.1))).toThrow(
    'Expected dew-point depression from 0 to 60 K',
  );
});

test('by day: leaves below 12 °C, the deficit above 15 °C, comfortable from 0.3 to 1.2 kPa', () => {
  // 0.3 kPa is 87.1701 % and 1.2 kPa 48.6797 % at 20 °C, computed apart from this code.
  const word = (t: number, rh: number) => dryingComfort(celsius(t), percent(rh));
  expect(word(11.99, 40)).toBe('judge-by-leaves');
  expect([word(12, 40), word(15, 40)]).toEqual(['between', 'between']);
  expect(word(15.01, 70)).toBe('comfortable');
  expect([word(20, 87.17), word(20, 87.18)]).toEqual(['comfortable', 'too-damp']);
  expect([word(20, 48.69), word(20, 48.67)]).toEqual(['comfortable', 'too-dry']);
});

test('a probe over salt shows its correction; beyond 6 % it is broken', () => {
  // CRC Handbook, constant humidity solutions at 25 °C: 75, 84 and 97 %.
  expect(saltCheck('sodium-chloride', percent(78))).toEqual({ offset: -3, usable: true });
  expect(saltCheck('potassium-chloride', percent(78))).toEqual({ offset: 6, usable: true });
  expect(saltCheck('potassium-sulphate', percent(90.9))).toMatchObject({ usable: false });
  expect(saltCheck('potassium-sulphate', percent(97))).toEqual({ offset: 0, usable: true });
  expect(() => saltCheck('sodium-chloride', percent(110.1))).toThrow(RangeError);
  expect(saltCheck('sodium-chloride', percent(110)).usable).toBe(false);
  expect(() => saltCheck('sugar' as 'sodium-chloride', percent(75))).toThrow(
    'Expected one of sodium-chloride, potassium-chloride, potassium-sulphate, got sugar',
  );
});

test('readings that make no air are unknown: out of range, no number, none at all', () => {
  expect(knownAir(20, 103)).toEqual({ temperature: 20, humidity: 100 });
  expect(knownAir(20, 105)).toEqual({ temperature: 20, humidity: 100 });
  for (const [t, rh] of [
    [20, 0],
    [20, 105.1],
    [20, Number.NaN],
    [Number.NaN, 50],
    [-30.1, 50],
    [60.1, 50],
    [null, 50],
    [20, null],
  ] as const) {
    expect(knownAir(t, rh)).toBeNull();
    expect(knownDewPoint(t, rh)).toBeNull();
  }
  expect(knownAir(-30, 50)).not.toBeNull();
  expect(knownAir(60, 50)).not.toBeNull();
});

test('a probe under 5 % is dead, and has no dew point', () => {
  expect(knownDewPoint(20, 4.99)).toBeNull();
  expect(knownDewPoint(20, 5)).toBeCloseTo(dewPoint(celsius(20), percent(5)), 12);
});

test('unknown in, unknown out', () => {
  const [t, rh] = [celsius(20), percent(50)];
  for (const formula of [
    absoluteHumidity,
    dewPoint,
    dewPointDepression,
    dryingComfort,
    frostPoint,
    humidityRatio,
    vapourPressure,
    vapourPressureDeficit,
    wetBulb,
  ]) {
    expect(formula(null, rh)).toBeNull();
    expect(formula(t, null)).toBeNull();
  }
  expect(saturationVapourPressure(null)).toBeNull();
  expect(saturationOverIce(null)).toBeNull();
  expect(humidityForDeficit(t, null)).toBeNull();
  expect(humidityAtDepression(null, kelvin(2))).toBeNull();
  expect(saltCheck('sodium-chloride', null)).toBeNull();
  expect(dewPointRange(t, null, 2, kelvin(0))).toBeNull();
});

test('limits of what is accepted', () => {
  expect(() => saturationOverIce(celsius(-45))).not.toThrow();
  expect(() => saturationOverIce(celsius(-45.1))).toThrow(RangeError);
  expect(() => humidityRatio(celsius(20), percent(50), 55)).not.toThrow();
  expect(() => humidityRatio(celsius(20), percent(50), 54.9)).toThrow(RangeError);
  expect(() => humidityRatio(celsius(20), percent(50), 110)).not.toThrow();
  expect(() => humidityRatio(celsius(20), percent(50), 110.1)).toThrow(RangeError);
});
