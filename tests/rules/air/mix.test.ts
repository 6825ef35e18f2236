import fc from 'fast-check';
import { expect, test } from 'vitest';
import { mix, vapourPressure, ventGain } from '../../../rules/air/index.ts';
import { celsius, percent } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

const air = (temperature: number, humidity: number) => ({
  temperature: celsius(temperature),
  humidity: percent(humidity),
});
const anyAir = fc
  .tuple(
    fc.double({ min: -20, max: 45, noNaN: true }),
    fc.double({ min: 5, max: 100, noNaN: true }),
  )
  .map(([temperature, humidity]) => air(temperature, humidity));
const anyShare = fc.double({ min: 0, max: 1, noNaN: true });

test.for(truth('air/mix.csv', ['a_c', 'a_pct', 'b_c', 'b_pct', 'share', 'air_c', 'humidity_pct']))(
  '$a_c °C $a_pct % and $b_c °C $b_pct % mix at $share to $air_c °C $humidity_pct %',
  (row) => {
    const mixed = mix(air(row.a_c, row.a_pct), air(row.b_c, row.b_pct), row.share);
    expect(mixed.temperature).toBeCloseTo(row.air_c, 6);
    expect(Math.abs(mixed.humidity - row.humidity_pct)).toBeLessThan(0.006);
    expect(mixed.fog).toBe(row.humidity_pct > 100);
  },
);

test.for(truth('air/ventGain.csv', ['in_c', 'in_pct', 'out_c', 'out_pct', 'gain_g_m3']))(
  'opening $in_c °C $in_pct % to $out_c °C $out_pct % takes out $gain_g_m3 g/m³',
  (row) => {
    const gain = ventGain(air(row.in_c, row.in_pct), air(row.out_c, row.out_pct));
    expect(Math.abs(gain - row.gain_g_m3)).toBeLessThan(0.0006);
  },
);

test('a mixture lies between its parts, in warmth and in vapour', () => {
  fc.assert(
    fc.property(anyAir, anyAir, anyShare, (a, b, share) => {
      const { temperature, humidity } = mix(a, b, share);
      const [e1, e2] = [a, b].map((each) => vapourPressure(each.temperature, each.humidity));
      const e = (humidity / 100) * vapourPressure(temperature, percent(100));
      const between = (x: number, p: number, q: number) =>
        x >= Math.min(p, q) - 1e-9 && x <= Math.max(p, q) + 1e-9;
      return between(temperature, a.temperature, b.temperature) && between(e, e1 ?? 0, e2 ?? 0);
    }),
  );
});

test('mixing with oneself changes nothing and makes no fog', () => {
  fc.assert(
    fc.property(anyAir, anyShare, (a, share) => {
      const mixed = mix(a, a, share);
      return !mixed.fog && Math.abs(mixed.humidity - a.humidity) < 1e-9;
    }),
  );
});

test('what one place gains in dryness from another is a loss the other way', () => {
  fc.assert(fc.property(anyAir, anyAir, (a, b) => ventGain(a, b) * ventGain(b, a) <= 0));
});

test('a share is from 0 to 1', () => {
  expect(() => mix(air(14, 96), air(9, 85), 1.2)).toThrow('Expected share from 0 to 1');
});
