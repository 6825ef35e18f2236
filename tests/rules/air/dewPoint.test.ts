import fc from 'fast-check';
import psychrolib from 'psychrolib';
import { expect, test } from 'vitest';
import {
  dewPoint,
  dewPointDepression,
  frostPoint,
  vapourPressure,
} from '../../../rules/air/index.ts';
import { celsius, percent } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

psychrolib.SetUnitSystem(psychrolib.SI);
const anyAir = fc.double({ min: -30, max: 60, noNaN: true }).map(celsius);
const anyHumidity = fc.double({ min: 0.5, max: 100, noNaN: true }).map(percent);
const hair = 1e-9; // °C: room for the last bits of a logarithm

test.for(truth('air/dewPoint.csv', ['air_c', 'air_kpa', 'dew_c', 'dew_kpa']))(
  'agrees with IAPWS-IF97 to 0.03 °C at $air_c °C air and $dew_c °C dew point',
  (row) => {
    const humidity = percent((100 * row.dew_kpa) / row.air_kpa);
    expect(Math.abs(dewPoint(celsius(row.air_c), humidity) - row.dew_c)).toBeLessThan(0.03);
  },
);

test.for(truth('air/belowFreezing.csv', ['air_c', 'humidity_pct', 'dew_c', 'frost_c']))(
  'cold air of $air_c °C and $humidity_pct % has dew point $dew_c and frost point $frost_c',
  ({ air_c, humidity_pct, dew_c, frost_c }) => {
    expect(dewPoint(celsius(air_c), percent(humidity_pct))).toBeCloseTo(dew_c, 3);
    expect(frostPoint(celsius(air_c), percent(humidity_pct))).toBeCloseTo(frost_c, 2);
  },
);

test('agrees with psychrolib to 0.03 °C where the dew point is above freezing', () => {
  for (let air = 2; air <= 40; air += 2) {
    for (let rh = 20; rh <= 100; rh += 5) {
      const theirs = psychrolib.GetTDewPointFromRelHum(air, rh / 100);
      if (theirs <= 0.05) continue; // below it the library speaks of frost points
      expect(Math.abs(dewPoint(celsius(air), percent(rh)) - theirs)).toBeLessThan(0.03);
    }
  }
});

test('saturated air is already at its dew point', () => {
  fc.assert(fc.property(anyAir, (air) => dewPoint(air, percent(100)) === air));
});

test('the dew point is never above the air temperature', () => {
  fc.assert(fc.property(anyAir, anyHumidity, (air, rh) => dewPointDepression(air, rh) >= 0));
});

test('damper air at the same temperature never has a lower dew point', () => {
  fc.assert(
    fc.property(anyAir, anyHumidity, anyHumidity, (air, a, b) => {
      const [drier, damper] = a <= b ? [a, b] : [b, a];
      return dewPoint(air, drier) <= dewPoint(air, damper) + hair;
    }),
  );
});

test('air cooled to its dew point is saturated: the vapour is still there', () => {
  fc.assert(
    fc.property(anyAir, anyHumidity, (air, rh) => {
      const dew = dewPoint(air, rh);
      if (dew < -30) return true; // colder than the saturation curve is asked for
      const ratio = vapourPressure(dew, percent(100)) / vapourPressure(air, rh);
      return Math.abs(ratio - 1) < 1e-9;
    }),
  );
});

test('hoar grows before dew would form, and only below 0 °C', () => {
  fc.assert(
    fc.property(anyAir, anyHumidity, (air, rh) => {
      const dew = dewPoint(air, rh);
      const frost = frostPoint(air, rh);
      return dew >= 0 ? frost === null : frost !== null && frost >= dew && frost <= 0;
    }),
  );
});

test('a humidity no probe can mean is refused in one plain sentence', () => {
  expect(() => dewPoint(celsius(20), percent(140))).toThrow(
    'Expected relative humidity from above 0 to 105 %, got 140',
  );
  expect(() => dewPoint(celsius(20), percent(Number.NaN))).toThrow(RangeError);
  expect(() => frostPoint(celsius(-31), percent(50))).toThrow(RangeError);
});
