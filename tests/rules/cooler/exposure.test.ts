import fc from 'fast-check';
import { expect, test } from 'vitest';
import { meanKineticTemperature, remainingLife, timeAbove } from '../../../rules/cooler/index.ts';
import { instant, MINUTE } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

const series = (points: readonly (readonly [minute: number, value: number])[]) =>
  points.map(([minute, value]) => ({ t: instant(minute * MINUTE), value }));
const anySeries = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 90 }), fc.double({ min: -5, max: 20, noNaN: true })), {
    maxLength: 40,
  })
  .map((steps) => {
    let minute = 0;
    return series(
      steps.map(([step, value]) => {
        minute += step;
        return [minute, value] as const;
      }),
    );
  });
const berries = { reference: 0, q10: 3, life: 10 };

test.for(truth('cooler/meanKineticTemperature.csv', ['mkt_c'], ['temperatures']))(
  '$temperatures °C have a mean kinetic temperature of $mkt_c',
  ({ mkt_c, temperatures }) => {
    expect(meanKineticTemperature(temperatures.split(' ').map(Number))).toBeCloseTo(mkt_c, 4);
  },
);

test('22 h at 3 °C and 2 h at 12 °C count as 4.2549 °C', () => {
  // NumPy, from the same formula apart from this code.
  expect(meanKineticTemperature([3, 12], [22, 2])).toBeCloseTo(4.2549, 4);
});

test('it lies between the plain mean and the warmest', () => {
  const temperatures = fc.array(fc.double({ min: -5, max: 35, noNaN: true }), { minLength: 1 });
  fc.assert(
    fc.property(temperatures, (list) => {
      const kinetic = meanKineticTemperature(list);
      const mean = list.reduce((sum, value) => sum + value, 0) / list.length;
      return kinetic >= mean - 1e-9 && kinetic <= Math.max(...list) + 1e-9;
    }),
  );
});

test('a lot of berries, 6 h at 20 and 48 h at 3 °C, keeps 3.574 days more at 3 °C', () => {
  // By hand: 6 x 9 + 48 x 3^0.3 = 120.739 h used of 240; the rest over 3^0.3 x 24.
  const history = [
    { hours: 6, temperature: 20 },
    { hours: 48, temperature: 3 },
  ];
  expect(remainingLife(berries, history)).toBeCloseTo(3.574, 4);
  expect(remainingLife({ ...berries, q10: 2.5 }, history)).toBeCloseTo(4.4096, 4);
  expect(remainingLife(berries, history, 0)).toBeCloseTo((240 - 120.739) / 24, 3);
});

test('a lot without a history has its whole life, and one kept too long has none', () => {
  expect(remainingLife(berries, [])).toBe(10);
  expect(remainingLife(berries, [{ hours: 200, temperature: 20 }])).toBe(0);
});

test('warmer hours never leave more life', () => {
  const t = fc.double({ min: 0, max: 35, noNaN: true });
  fc.assert(
    fc.property(t, t, fc.double({ min: 0, max: 100, noNaN: true }), (a, b, hours) => {
      const left = (temperature: number) => remainingLife(berries, [{ hours, temperature }], 3);
      return left(Math.max(a, b)) <= left(Math.min(a, b)) + 1e-12;
    }),
  );
});

test('life is not reckoned for frozen produce', () => {
  expect(() => remainingLife(berries, [{ hours: 1, temperature: -2 }])).toThrow(
    'Expected temperature it will lie at from 0 to 35 °C, got -2',
  );
  expect(() => remainingLife({ ...berries, q10: 0.5 }, [])).toThrow('Expected q10 from 1 to 10');
});

test('a warm spell of two hours is 67.5 min above 5 °C and 1.6875 K h', () => {
  // By hand, splitting each line where it crosses.
  const readings = series([
    [0, 3],
    [30, 4],
    [60, 8],
    [90, 6],
    [120, 4],
  ]);
  const result = timeAbove(readings, 5, {});
  expect(result.aboveHours * 60).toBeCloseTo(67.5, 9);
  expect(result.belowHours * 60).toBeCloseTo(52.5, 9);
  expect(result.degreeHours).toBeCloseTo(1.6875, 9);
  expect(result.unknownHours).toBe(0);
});

test('an hour without readings is neither above nor below', () => {
  // By hand: 20 above, 10 below, 60 unknown.
  const readings = series([
    [0, 4],
    [10, 6],
    [20, 6],
    [80, 6],
    [90, 4],
  ]);
  const { aboveHours, belowHours, unknownHours } = timeAbove(readings, 5, { gapMaxMinutes: 30 });
  expect([aboveHours, belowHours, unknownHours].map((h) => Math.round(h * 60))).toEqual([
    20, 10, 60,
  ]);
  expect(timeAbove(readings, 5)).toEqual(timeAbove(readings, 5, { gapMaxMinutes: 30 })); // three steps
});

test('above, below and unknown add up to the time passed', () => {
  fc.assert(
    fc.property(anySeries, fc.double({ min: 0, max: 10, noNaN: true }), (readings, limit) => {
      const result = timeAbove(readings, limit, { gapMaxMinutes: 45 });
      const passed = ((readings.at(-1)?.t ?? 0) - (readings[0]?.t ?? 0)) / (60 * MINUTE);
      const parts = [result.aboveHours, result.belowHours, result.unknownHours];
      return (
        parts.every((part) => part >= -1e-9) &&
        Math.abs(parts.reduce((sum, part) => sum + part, 0) - passed) < 1e-9
      );
    }),
  );
});

test('a higher limit never has more time above it', () => {
  const limit = fc.double({ min: 0, max: 10, noNaN: true });
  fc.assert(
    fc.property(anySeries, limit, limit, (readings, a, b) => {
      const above = (at: number) => timeAbove(readings, at, { gapMaxMinutes: 45 });
      const low = above(Math.min(a, b));
      const high = above(Math.max(a, b));
      return high.aboveHours <= low.aboveHours + 1e-9 && high.degreeHours <= low.degreeHours + 1e-9;
    }),
  );
});
