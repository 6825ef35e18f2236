import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  activationOf,
  meanKineticOfReadings,
  meanKineticTemperature,
  remainingLife,
  timeAbove,
} from '../../../rules/cooler/index.ts';
import { instant, MINUTE } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';
import { anySeries, series } from './minutes.ts';

const berries = { reference: 0, q10: 3, life: 10 };

test.for(truth('cooler/meanKineticTemperature.csv', ['mkt_c'], ['temperatures']))(
  '$temperatures °C have a mean kinetic temperature of $mkt_c',
  ({ mkt_c, temperatures }) => {
    expect(meanKineticTemperature(temperatures.split(' ').map(Number))).toBeCloseTo(mkt_c, 4);
  },
);

test.for(truth('cooler/kineticWeighted.csv', ['most_c', 'spell_c', 'activation', 'mkt_c']))(
  '22 h at $most_c °C and 2 h at $spell_c °C count as $mkt_c with $activation K',
  ({ most_c, spell_c, activation, mkt_c }) => {
    expect(meanKineticTemperature([most_c, spell_c], [22, 2], activation)).toBeCloseTo(mkt_c, 5);
  },
);

test('without a figure of its own the medicines rule is taken', () => {
  expect(meanKineticTemperature([3, 12], [22, 2])).toBe(
    meanKineticTemperature([3, 12], [22, 2], 10_000),
  );
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

const parts = ['gap_max', 'above', 'below', 'unknown', 'worst', 'degree_hours'] as const;
test.for(truth('cooler/timeAbove.csv', parts, ['minutes', 'values']))(
  '$values °C at $minutes min are $above min above 5 °C, $unknown unknown, $worst at worst',
  (row) => {
    const values = row.values.split(' ').map(Number);
    const minutes = row.minutes.split(' ').map(Number);
    const readings = series(minutes.map((minute, i) => [minute, values[i] ?? Number.NaN] as const));
    const result = timeAbove(readings, 5, { gapMaxMinutes: row.gap_max });
    expect(result.aboveHours * 60).toBeCloseTo(row.above, 9);
    expect(result.belowHours * 60).toBeCloseTo(row.below, 9);
    expect(result.unknownHours * 60).toBeCloseTo(row.unknown, 9);
    expect(result.worstHours * 60).toBeCloseTo(row.worst, 9);
    expect(result.degreeHours).toBeCloseTo(row.degree_hours, 8);
    expect(timeAbove(readings, 5)).toEqual(result); // three usual steps are at least that gap here
  },
);

test('a gap of more than three usual steps is unknown', () => {
  const steps = (last: number) =>
    series([0, 10, 20, 30, 40, 50, 60, 60 + last].map((minute) => [minute, 4] as const));
  expect(timeAbove(steps(30), 5).unknownHours).toBe(0);
  expect(timeAbove(steps(30.5), 5).unknownHours * 60).toBeCloseTo(30.5, 9);
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

test('cutting a series in two changes no sum', () => {
  fc.assert(
    fc.property(anySeries, fc.nat(40), (readings, cut) => {
      const options = { gapMaxMinutes: 45 };
      const whole = timeAbove(readings, 5, options);
      const at = Math.min(cut, readings.length);
      const first = timeAbove(readings.slice(0, at + 1), 5, options);
      const second = timeAbove(readings.slice(at), 5, options);
      return (['aboveHours', 'belowHours', 'unknownHours', 'degreeHours'] as const).every(
        (name) => Math.abs(first[name] + second[name] - whole[name]) < 1e-9,
      );
    }),
  );
});

test('a reading that is not known never lowers the worst time above', () => {
  fc.assert(
    fc.property(anySeries, fc.nat(40), (readings, which) => {
      const holed = readings.map((reading, i) =>
        i === which ? { ...reading, value: null } : reading,
      );
      const options = { gapMaxMinutes: 45 };
      return (
        timeAbove(holed, 5, options).worstHours >= timeAbove(readings, 5, options).worstHours - 1e-9
      );
    }),
  );
});

test('a series has the mean kinetic temperature of its parts, when 90 % are known', () => {
  const minutes = (values: readonly (number | null)[]) =>
    values.map((value, i) => ({ t: instant(i * 10 * MINUTE), value }));
  // NumPy: equal weights but half ones at both ends.
  const { temperature, knownShare } = meanKineticOfReadings(minutes([3, 3, 12, 12, 3]));
  expect(knownShare).toBe(1);
  expect(temperature).toBeCloseTo(8.6542406, 6);
  const steady: (number | null)[] = new Array(41).fill(4);
  const holes = (n: number) => minutes(steady.map((value, i) => (i > 0 && i <= n ? null : value)));
  expect(meanKineticOfReadings(holes(3)).knownShare).toBe(0.9);
  expect(meanKineticOfReadings(holes(3)).temperature).toBeCloseTo(4, 9);
  expect(meanKineticOfReadings(holes(4)).temperature).toBeNull();
  expect(meanKineticOfReadings([])).toEqual({ temperature: null, knownShare: 0 });
});

test('more than three usual steps without a reading are not known', () => {
  const steps = (last: number) =>
    [0, 10, 20, 30, 40, 50, 60, 60 + last].map((minute) => ({
      t: instant(minute * MINUTE),
      value: 4,
    }));
  expect(meanKineticOfReadings(steps(30)).knownShare).toBe(1);
  expect(meanKineticOfReadings(steps(30.5)).knownShare).toBeCloseTo(60 / 90.5, 9);
});

test('a Q10 of 3 from 0 to 10 °C is 8,497 K', () => {
  // NumPy: ln 3 / (1 / 273.15 - 1 / 283.15).
  expect(activationOf(3, 0)).toBeCloseTo(8496.93358, 3);
  expect(activationOf(null, 0)).toBeNull();
});
