import fc from 'fast-check';
import { expect, test } from 'vitest';
import { saturationOverIce, saturationVapourPressure, wetBulb } from '../../../rules/air/index.ts';
import {
  advectiveFrost,
  betterUpdate,
  coolingCurve,
  coverBy,
  escalates,
  fitNightLow,
  learnedSpread,
  leftCurve,
  predictNightLow,
  probabilityBelow,
  probabilityBelowBy,
  refittedLow,
  remainingSpread,
  shiftedLow,
  sprinklingSafe,
  untrainedLow,
  updatedLow,
} from '../../../rules/frost/index.ts';
import { celsius, HOUR, instant, MINUTE, percent } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

const fao = truth('frost/faoNights.csv', ['temperature', 'dew_point', 'low']).map((row) => ({
  temperature: celsius(row.temperature),
  dewPoint: celsius(row.dew_point),
  low: celsius(row.low),
}));
const evening = { start: 3, nightHours: 13 };
const tonight = { ...predictNightLow(fitNightLow(fao), { temperature: celsius(3) }), ...evening };
const clear = { start: 0.95, low: -5.45, nightHours: 15 };
const readings = [-0.5, -1.0, -1.5, -1.9, -2.2, -2.4].map((value, index) => ({
  after: index + 3,
  value,
}));

test.for(truth('frost/byTime.csv', ['hours', 'p']))(
  '$hours h after sunset it is below -1.1 °C with chance $p',
  ({ hours, p }) => {
    expect(Math.abs(probabilityBelowBy(tonight, -1.1, hours) - p)).toBeLessThan(1e-6);
  },
);

test('the chance grows through the night, to that of the low', () => {
  const hour = fc.double({ min: 2, max: 13, noNaN: true });
  const threshold = fc.double({ min: -12, max: 6, noNaN: true });
  fc.assert(
    fc.property(hour, hour, threshold, (a, b, at) => {
      const by = (after: number) => probabilityBelowBy(tonight, at, after);
      return by(Math.min(a, b)) <= by(Math.max(a, b)) + 1e-12;
    }),
  );
  expect(probabilityBelowBy(tonight, -2, 13)).toBeCloseTo(probabilityBelow(tonight, -2), 12);
  expect(probabilityBelowBy(tonight, 3.5, 2)).toBe(1);
  expect(probabilityBelowBy(tonight, 2.5, 2)).toBe(0);
});

test('a reading warmer than the curve moves the low, and the slope is put anew', () => {
  expect(shiftedLow(clear, { after: 8, value: -2.4 })).toBeCloseTo(-4.4521, 4);
  // SciPy: least squares through the start, slope 1.40003.
  expect(refittedLow(clear, readings)).toBeCloseTo(-4.097883, 6);
  expect(updatedLow(clear, readings)).toBeCloseTo((-4.452056 - 4.097883) / 2, 5);
  expect(updatedLow(clear, readings, 'shifted')).toBeCloseTo(-4.452056, 5);
  expect(updatedLow(clear, readings, 'refitted')).toBeCloseTo(-4.097883, 5);
});

test('a night that keeps to its curve keeps its low', () => {
  const on = [3, 5, 9, 12].map((after) => ({
    after,
    value: Number(coolingCurve(clear, after)),
  }));
  expect(updatedLow(clear, on)).toBeCloseTo(clear.low, 9);
});

test('before two hours after sunset, and without a curve, nothing is updated', () => {
  expect(updatedLow(clear, [{ after: 1, value: 0 }])).toBeNull();
  expect(refittedLow(clear, [{ after: 2, value: 0.9 }])).toBeNull();
  expect(updatedLow(clear, [])).toBeNull();
  expect(updatedLow({ ...clear, low: 5 }, readings)).toBeNull();
});

test('the way that verified better on fifteen nights is kept', () => {
  const nights = (count: number, low: number) =>
    Array.from({ length: count }, () => ({ shifted: -4, refitted: -2, low }));
  expect(betterUpdate(nights(14, -4))).toBe('mean');
  expect(betterUpdate(nights(15, -4))).toBe('shifted');
  expect(betterUpdate(nights(15, -2.1))).toBe('refitted');
  expect(betterUpdate(nights(15, -3.1))).toBe('mean');
});

test('the spread shrinks towards sunrise: 0.7476 is 0.5486 at 8 of 15 h', () => {
  expect(remainingSpread(0.7476, 8, 15)).toBeCloseTo(0.548588, 6); // SciPy
  expect(remainingSpread(0.7476, 2, 15)).toBe(0.7476);
  expect(remainingSpread(0.7476, 15, 15)).toBe(0);
  expect(learnedSpread([3, ...Array<number>(13).fill(0)])).toBeNull();
  expect(learnedSpread([3, 4, ...Array<number>(14).fill(0)])).toBeCloseTo(1.25, 12); // √(25/16)
  expect(learnedSpread(Array<number>(15).fill(2))).toBe(2);
});

test('a kelvin above the curve, or half a kelvin of rise, says that cloud or wind came', () => {
  const curve = Number(coolingCurve(clear, 8));
  const at = (value: number) => [...readings.slice(0, 2), { after: 8, value }];
  expect(leftCurve(clear, [{ after: 8, value: curve + 0.99 }])).toBe(false);
  expect(leftCurve(clear, [{ after: 8, value: curve + 1.01 }])).toBe(true);
  const risen = (by: number) => [
    { after: 7, value: -4 },
    { after: 8, value: -4 + by },
  ];
  expect(leftCurve(clear, risen(0.49))).toBe(false);
  expect(leftCurve(clear, risen(0.5))).toBe(true);
  expect(leftCurve(clear, at(curve))).toBe(false);
  expect(leftCurve(clear, [])).toBeNull();
  expect(leftCurve(clear, [{ after: 1.99, value: 9 }])).toBeNull();
});

test('an untrained night shows the shape of the example nights', () => {
  const model = fitNightLow(fao.map((night) => ({ ...night, dewPoint: null })));
  for (const temperature of [-5, 3, 12].map(celsius)) {
    expect(untrainedLow(temperature)).toBeCloseTo(predictNightLow(model, { temperature }).mean, 5);
  }
});

test('covers go on an hour before sunset, or as long before the frost as the work takes', () => {
  const sunset = instant(100 * HOUR);
  expect(coverBy(sunset, instant(104 * HOUR), 40)).toBe(99 * HOUR);
  expect(coverBy(sunset, instant(99.5 * HOUR), 40)).toBe(99.5 * HOUR - 40 * MINUTE);
  expect(coverBy(sunset, null, 40)).toBe(99 * HOUR);
});

test('wind with air within a kelvin of the threshold is frost that no cover holds off', () => {
  expect(advectiveFrost(0.9, 2, 0)).toBe(true);
  expect(advectiveFrost(0.99, 1.98, 0)).toBe(false);
  expect(advectiveFrost(1, 5, 0)).toBe(false);
  expect(advectiveFrost(null, 5, 0)).toBeNull();
});

test('a frost is said again when it has doubled, or comes over an hour earlier', () => {
  const said = { probability: 0.3, crossing: instant(10 * HOUR) };
  expect(escalates(said, { ...said, probability: 0.6 })).toBe(true);
  expect(escalates(said, { ...said, probability: 0.59 })).toBe(false);
  expect(escalates(said, { ...said, crossing: instant(9 * HOUR) })).toBe(false);
  expect(escalates(said, { ...said, crossing: instant(9 * HOUR - 1) })).toBe(true);
  expect(escalates(said, { ...said, crossing: null })).toBe(false);
  expect(escalates({ ...said, crossing: null }, said)).toBe(true);
  expect(escalates({ probability: 0, crossing: null }, { probability: 0, crossing: null })).toBe(
    false,
  );
});

test.for(truth('frost/wetBulb.csv', ['air_c', 'dew_c', 'bulb_c']))(
  'at $air_c °C with a dew point of $dew_c the wet bulb is $bulb_c',
  ({ air_c, dew_c, bulb_c }) => {
    const vapour =
      dew_c < 0 ? saturationOverIce(celsius(dew_c)) : saturationVapourPressure(celsius(dew_c));
    const humidity = percent((100 * vapour) / saturationVapourPressure(celsius(air_c)));
    const bulb = wetBulb(celsius(air_c), humidity);
    expect(Math.abs(bulb - bulb_c)).toBeLessThan(0.05);
    expect(sprinklingSafe(bulb, bulb_c - 0.05)).toBe(true);
    expect(sprinklingSafe(bulb, bulb_c + 0.05)).toBe(false);
  },
);
