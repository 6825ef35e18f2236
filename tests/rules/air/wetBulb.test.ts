import fc from 'fast-check';
import psychrolib from 'psychrolib';
import { expect, test } from 'vitest';
import { dewPoint, wetBulb } from '../../../rules/air/index.ts';
import { celsius, percent } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

psychrolib.SetUnitSystem(psychrolib.SI);
const anyAir = fc.double({ min: -20, max: 50, noNaN: true }).map(celsius);
const anyHumidity = fc.double({ min: 5, max: 100, noNaN: true }).map(percent);

test.for(truth('air/wetBulb.csv', ['air_c', 'humidity_pct', 'bulb_c']))(
  'air of $air_c °C and $humidity_pct % cools to $bulb_c °C',
  ({ air_c, humidity_pct, bulb_c }) => {
    expect(Math.abs(wetBulb(celsius(air_c), percent(humidity_pct)) - bulb_c)).toBeLessThan(0.006);
  },
);

test.for(truth('air/wetBulbSheet.csv', ['air_c', 'humidity_pct', 'bulb_c']))(
  'by the balance of heats, air of $air_c °C and $humidity_pct % cools to $bulb_c °C',
  ({ air_c, humidity_pct, bulb_c }) => {
    expect(Math.abs(wetBulb(celsius(air_c), percent(humidity_pct)) - bulb_c)).toBeLessThan(1e-6);
  },
);

test('agrees with psychrolib to 0.03 °C from 5 to 40 °C, at sea level and at 1,500 m', () => {
  for (const pressure of [101.325, 84.5]) {
    for (let air = 5; air <= 40; air += 5) {
      for (let rh = 20; rh <= 100; rh += 10) {
        const theirs = psychrolib.GetTWetBulbFromRelHum(air, rh / 100, pressure * 1000);
        // Across 0 °C bulbs may be wet or iced, and the two programs may choose differently.
        if (Math.abs(theirs) < 0.3) continue;
        const ours = wetBulb(celsius(air), percent(rh), pressure);
        expect(Math.abs(ours - theirs)).toBeLessThan(0.03);
      }
    }
  }
});

test('the wet bulb lies between the dew point and the air', () => {
  fc.assert(
    fc.property(anyAir, anyHumidity, (air, rh) => {
      const bulb = wetBulb(air, rh);
      return bulb <= air + 1e-6 && bulb >= dewPoint(air, rh) - 0.02;
    }),
  );
});

test('damper air never has a colder wet bulb', () => {
  fc.assert(
    fc.property(anyAir, anyHumidity, anyHumidity, (air, a, b) => {
      return wetBulb(air, percent(Math.min(a, b))) <= wetBulb(air, percent(Math.max(a, b)));
    }),
  );
});

test('saturated air can not be cooled by evaporation', () => {
  expect(wetBulb(celsius(12), percent(104))).toBe(12);
});

test('pressure is in kPa, and hectopascals are refused', () => {
  expect(() => wetBulb(celsius(20), percent(50), 1013)).toThrow(
    'Expected air pressure from 55 to 110 kPa, got 1013',
  );
});
