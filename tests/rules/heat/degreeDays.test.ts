import fc from 'fast-check';
import { expect, test } from 'vitest';
import { degreeDays, hoursBelow } from '../../../rules/heat/index.ts';
import { HOUR, instant } from '../../../rules/units.ts';

const series = (points: readonly (readonly [hour: number, value: number])[]) =>
  points.map(([hour, value]) => ({ t: instant(hour * HOUR), value }));
const anySeries = fc
  .array(
    fc.tuple(
      fc.double({ min: 0.1, max: 3, noNaN: true }),
      fc.double({ min: -10, max: 45, noNaN: true }),
    ),
    {
      minLength: 2,
      maxLength: 40,
    },
  )
  .map((steps) => {
    let hour = 0;
    return series(
      steps.map(([step, value]) => {
        hour += step;
        return [hour, value] as const;
      }),
    );
  });
const hourUnits = (readings: ReturnType<typeof series>, lower: number, upper?: number) =>
  24 * degreeDays(readings, { lower, upper }).degreeDays;

test('a line from 28 to 34 °C in an hour is worth 19.6667 °C h between 10 and 30', () => {
  // By hand: 1/3 h at a mean of 19 and 2/3 h at 20.
  expect(
    hourUnits(
      series([
        [0, 28],
        [1, 34],
      ]),
      10,
      30,
    ),
  ).toBeCloseTo(59 / 3, 9);
});

test('seven readings over three hours are worth 21.49811 °C h', () => {
  // Brute force over three million points of the same lines, apart from this code.
  const readings = series([
    [0, 6],
    [0.5, 9],
    [1, 12],
    [1.5, 12],
    [2, 20],
    [2.5, 31],
    [3, 27],
  ]);
  expect(hourUnits(readings, 10, 30)).toBeCloseTo(21.49811, 5);
});

test('12 °C and 15 °C an hour and a half later are worth 5.25 °C h above 10', () => {
  expect(
    hourUnits(
      series([
        [0, 12],
        [1.5, 15],
      ]),
      10,
    ),
  ).toBeCloseTo(5.25, 9);
});

test('a longer gap adds nothing and is unknown', () => {
  const readings = series([
    [0, 20],
    [1, 20],
    [3, 20],
    [4, 20],
  ]);
  const { degreeDays: units, unknownHours } = degreeDays(readings, { lower: 10 });
  expect(units).toBeCloseTo(20 / 24, 12);
  expect(unknownHours).toBe(2);
  expect(degreeDays(readings, { lower: 10, maxGapMinutes: 120 }).unknownHours).toBe(0);
});

test('a window cuts lines at its ends, and its bare ends are unknown', () => {
  const readings = series([
    [0, 10],
    [1, 20],
    [2, 30],
  ]);
  const half = degreeDays(readings, { lower: 10, from: instant(HOUR / 2), to: instant(HOUR) });
  expect(24 * half.degreeDays).toBeCloseTo(3.75, 9); // from 15 to 20 °C: 7.5 for half an hour
  expect(half.unknownHours).toBe(0);
  const wide = degreeDays(readings, { lower: 10, from: instant(-HOUR), to: instant(4 * HOUR) });
  expect(wide.unknownHours).toBe(3);
});

test('no readings: nothing is known of the window', () => {
  const window = { from: instant(0), to: instant(24 * HOUR) };
  expect(degreeDays([], { lower: 10, ...window })).toEqual({ degreeDays: 0, unknownHours: 24 });
});

test('splitting a list at a reading never changes its degree-days', () => {
  fc.assert(
    fc.property(anySeries, fc.nat(), (readings, where) => {
      const cut = where % readings.length;
      const rule = { lower: 8, upper: 28 };
      const whole = degreeDays(readings, rule);
      const first = degreeDays(readings.slice(0, cut + 1), rule);
      const rest = degreeDays(readings.slice(cut), rule);
      return (
        Math.abs(first.degreeDays + rest.degreeDays - whole.degreeDays) < 1e-9 &&
        Math.abs(first.unknownHours + rest.unknownHours - whole.unknownHours) < 1e-9
      );
    }),
  );
});

test('a reading in the middle of a straight line changes nothing', () => {
  fc.assert(
    fc.property(anySeries, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (readings, share) => {
      const [a, b] = readings;
      if (a === undefined || b === undefined || b.t - a.t > 1.5 * HOUR) return true;
      const between = {
        t: instant(a.t + share * (b.t - a.t)),
        value: a.value + share * (b.value - a.value),
      };
      const rule = { lower: 8, upper: 28 };
      const more = degreeDays([a, between, ...readings.slice(1)], rule);
      return Math.abs(more.degreeDays - degreeDays(readings, rule).degreeDays) < 1e-9;
    }),
  );
});

test('a higher base never gives more, and a cap never adds', () => {
  const base = fc.double({ min: 0, max: 25, noNaN: true });
  fc.assert(
    fc.property(anySeries, base, base, (readings, a, b) => {
      const low = hourUnits(readings, Math.min(a, b));
      const high = hourUnits(readings, Math.max(a, b));
      return (
        high >= 0 &&
        high <= low + 1e-9 &&
        hourUnits(readings, a, 30) <= hourUnits(readings, a) + 1e-9
      );
    }),
  );
});

test('from 14 to 8 °C in 3 h is 2 h and 4 °C h below 12', () => {
  // By hand: it crosses after one hour.
  const dose = hoursBelow(
    series([
      [0, 14],
      [3, 8],
    ]),
    12,
    { maxGapMinutes: 180 },
  );
  expect(dose.hours).toBeCloseTo(2, 9);
  expect(dose.degreeHours).toBeCloseTo(4, 9);
  expect(dose.unknownHours).toBe(0);
  expect(
    hoursBelow(
      series([
        [0, 14],
        [3, 8],
      ]),
      12,
    ),
  ).toEqual({ hours: 0, degreeHours: 0, unknownHours: 3 });
});

test('hours below and units above part the known time between them', () => {
  fc.assert(
    fc.property(anySeries, fc.double({ min: 0, max: 30, noNaN: true }), (readings, threshold) => {
      const below = hoursBelow(readings, threshold);
      const passed = ((readings.at(-1)?.t ?? 0) - (readings[0]?.t ?? 0)) / HOUR;
      return (
        below.hours >= 0 &&
        below.degreeHours >= 0 &&
        below.hours + below.unknownHours <= passed + 1e-9
      );
    }),
  );
});

test('readings out of order and thresholds upside down are refused', () => {
  expect(() =>
    degreeDays(
      series([
        [1, 10],
        [0, 10],
      ]),
      { lower: 5 },
    ),
  ).toThrow('Expected readings in order of time');
  expect(() => degreeDays([], { lower: 10, upper: 5 })).toThrow('Expected upper threshold from 10');
  expect(() => degreeDays(series([[0, Number.NaN]]), { lower: 5 })).toThrow(RangeError);
});
