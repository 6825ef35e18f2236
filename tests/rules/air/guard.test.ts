import { expect, test } from 'vitest';
import { knownAir, mix, saturationOverIce } from '../../../rules/air/index.ts';
import { celsius, percent } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

test.for(truth('air/guard.csv', ['air_c', 'humidity_pct', 'reckoned_pct']))(
  '$air_c °C $humidity_pct % is reckoned with at $reckoned_pct %',
  ({ air_c, humidity_pct, reckoned_pct }) => {
    expect(knownAir(air_c, humidity_pct)?.humidity ?? -1).toBe(reckoned_pct);
  },
);

test('ice above 0 °C and shares above 1 are refused', () => {
  expect(() => saturationOverIce(celsius(5))).toThrow(RangeError);
  const air = { temperature: celsius(15), humidity: percent(60) };
  expect(() => mix(air, air, 1.001)).toThrow('Expected share from 0 to 1, got 1.001');
  expect(() => mix(air, air, -0.001)).toThrow(RangeError);
  expect(mix(air, air, 1).temperature).toBe(15);
});
