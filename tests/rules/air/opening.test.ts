import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  mix,
  openingUp,
  openingVerdict,
  produceSweats,
  sameVapour,
  shareExchanged,
  vapourPressure,
  ventGain,
} from '../../../rules/air/index.ts';
import { celsius, gramsPerCubicMetre, percent } from '../../../rules/units.ts';
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

test.for(truth('air/sameVapour.csv', ['air_c', 'humidity_pct', 'becomes_c', 'then_pct']))(
  '$air_c °C $humidity_pct % brought to $becomes_c °C is at $then_pct %',
  (row) => {
    const then = sameVapour(air(row.air_c, row.humidity_pct), celsius(row.becomes_c));
    expect(Math.abs(then.humidity - row.then_pct)).toBeLessThan(6e-5);
    expect(then).toMatchObject({ temperature: row.becomes_c, fog: row.then_pct > 100 });
  },
);

test.for(
  truth('air/openingUp.csv', ['changes', 'warmed_c', 'mixed_c', 'mixed_pct', 'rewarmed_pct']),
)('$changes air changes, warmed to $warmed_c °C: $rewarmed_pct %', (row) => {
  const settings = { airChanges: row.changes, warmedTo: celsius(row.warmed_c) };
  const opening = openingUp(air(14, 96), air(9, 85), settings);
  expect(opening).toMatchObject({ verdict: 'dries', rewarmed: { temperature: row.warmed_c } });
  expect(opening?.mixed.temperature).toBeCloseTo(row.mixed_c, 4);
  expect(opening?.mixed.humidity).toBeCloseTo(row.mixed_pct, 4);
  expect(opening?.rewarmed?.humidity).toBeCloseTo(row.rewarmed_pct, 4);
});

test.for(truth('air/exchange.csv', ['changes', 'share']))(
  '$changes air changes replace $share of the air',
  ({ changes, share }) => expect(shareExchanged(changes)).toBeCloseTo(share, 6),
);

test.for(truth('air/openingVerdict.csv', ['in_c', 'in_pct', 'out_c', 'out_pct'], ['verdict']))(
  'opening $in_c °C $in_pct % to $out_c °C $out_pct %: $verdict',
  (row) => {
    const gain = ventGain(air(row.in_c, row.in_pct), air(row.out_c, row.out_pct));
    expect(openingVerdict(gain)).toBe(row.verdict);
  },
);

test('a gain counts from 0.3 g/m³ on, on either side', () => {
  const word = (gain: number) => openingVerdict(gramsPerCubicMetre(gain));
  expect([0.3, 0.2999, -0.2999, -0.3].map(word)).toEqual([
    'dries',
    'no-clear-difference',
    'no-clear-difference',
    'adds-water',
  ]);
  expect(() => word(Number.NaN)).toThrow('Expected gain in g/m³, got NaN');
});

test('fog that is warmed holds the vapour of both parts', () => {
  // By hand: half of each vapour pressure, at 20 °C.
  const opening = openingUp(air(15, 98), air(2, 95), {
    airChanges: Math.LN2,
    warmedTo: celsius(20),
  });
  expect(opening?.mixed.fog).toBe(true);
  const [a, b] = [
    vapourPressure(celsius(15), percent(98)),
    vapourPressure(celsius(2), percent(95)),
  ];
  const wanted = (100 * (a + b)) / 2 / vapourPressure(celsius(20), percent(100));
  expect(opening?.rewarmed?.humidity).toBeCloseTo(wanted, 9);
  expect(opening?.rewarmed?.fog).toBe(false);
});

test('without either air nobody can say what opening does', () => {
  expect(openingUp(null, air(9, 85), { airChanges: 1 })).toBeNull();
  expect(openingUp(air(9, 85), null, { airChanges: 1 })).toBeNull();
  expect(openingUp(air(14, 96), air(9, 85), { airChanges: 1 })?.rewarmed).toBeNull();
});

test('warming dries and cooling dampens, and there and back is where it was', () => {
  fc.assert(
    fc.property(anyAir, fc.double({ min: -20, max: 45, noNaN: true }), (a, to) => {
      const then = sameVapour(a, celsius(to));
      const drier = to >= a.temperature ? then.humidity <= a.humidity + 1e-9 : true;
      if (then.humidity > 100) return drier;
      const back = sameVapour(then, a.temperature);
      return drier && Math.abs(back.humidity - a.humidity) < 1e-9;
    }),
  );
});

test('more air changes bring a house nearer to the outside, and never past it', () => {
  const changes = fc.double({ min: 0, max: 1000, noNaN: true });
  fc.assert(
    fc.property(anyAir, anyAir, changes, changes, (inside, outside, a, b) => {
      const far = (n: number) =>
        Math.abs(mix(inside, outside, shareExchanged(n)).temperature - outside.temperature);
      return far(Math.max(a, b)) <= far(Math.min(a, b)) + 1e-9;
    }),
  );
  expect(shareExchanged(1000)).toBe(1);
  expect(() => shareExchanged(1001)).toThrow('Expected air changes from 0 to 1000, got 1001');
  expect(() => shareExchanged(-0.1)).toThrow(RangeError);
});

test('produce from a 3 °C room sweats in packhouse air, and dry or warm produce does not', () => {
  // Dew points 14.4997 and 12.0044 °C, computed apart from this code.
  const damp = produceSweats(celsius(3), air(18, 80));
  expect(damp.sweats).toBe(true);
  expect(damp.colderBy).toBeCloseTo(11.4997, 4);
  expect(produceSweats(celsius(3), air(20, 60)).dewPoint).toBeCloseTo(12.0044, 4);
  expect(produceSweats(celsius(12.01), air(20, 60)).sweats).toBe(false);
  expect(produceSweats(celsius(12), air(20, 60)).sweats).toBe(true);
  expect(() => produceSweats(celsius(61), air(20, 60))).toThrow(RangeError);
});

test('unknown in, unknown out', () => {
  expect(openingVerdict(null)).toBeNull();
  expect(shareExchanged(null)).toBeNull();
  expect(sameVapour(null, celsius(3))).toBeNull();
  expect(produceSweats(null, air(20, 60))).toBeNull();
  expect(mix(air(20, 60), null, 0.5)).toBeNull();
  expect(ventGain(air(20, 60), null)).toBeNull();
});
