import { expect, test } from 'vitest';
import {
  batchHeat,
  type DayHeat,
  dayHeat,
  degreeDaysSine,
  fillGaps,
  hourlyOffsets,
  screenReadings,
} from '../../../rules/heat/index.ts';
import { HOUR, instant, MINUTE } from '../../../rules/units.ts';

const at = (hour: number, value: number | null) => ({ t: instant(hour * HOUR), value });
const values = (readings: readonly { value: number | null }[]) =>
  readings.map(({ value }) => value);

test.for([
  [-40, true],
  [-40.5, false],
  [60, true],
  [60.5, false],
] as const)('a reading of %d °C is kept: %j', ([value, kept]) => {
  const { readings, refused } = screenReadings([at(0, value)], { outdoors: false });
  expect(values(readings)).toEqual([kept ? value : null]);
  expect(refused.range).toBe(kept ? 0 : 1);
});

test('outdoors a jump of more than 8 K within 5 minutes is refused, and only there', () => {
  const minutes = [
    [0, 10],
    [5, 18],
    [9, 26.1],
    [10.05, 26.1],
  ] as const;
  const readings = minutes.map(([minute, value]) => ({ t: instant(minute * MINUTE), value }));
  const out = screenReadings(readings, { outdoors: true });
  expect(values(out.readings)).toEqual([10, 18, null, 26.1]);
  expect(out.refused).toEqual({ range: 0, jump: 1, stuck: 0 });
  expect(values(screenReadings(readings, { outdoors: false }).readings)).toEqual([
    10, 18, 26.1, 26.1,
  ]);
});

test('outdoors one value for more than six hours is refused whole', () => {
  const run = (hours: number) => [at(0, 5), at(hours / 2, 5), at(hours, 5), at(hours + 1, 6)];
  expect(screenReadings(run(6), { outdoors: true }).refused.stuck).toBe(0);
  const stuck = screenReadings(run(6.1), { outdoors: true });
  expect(values(stuck.readings)).toEqual([null, null, null, 6]);
  expect(screenReadings(run(30), { outdoors: false }).refused.stuck).toBe(0);
});

test('the offset of an hour is the median of fourteen days, at the same moment', () => {
  const days = Array.from({ length: 16 }, (_, day) => day);
  // The probe is 1 K warmer at 6 h and 3 K at 14 h; long ago it was otherwise; one day was odd.
  const probe = days.flatMap((day) => [
    at(24 * day + 6.5, 10 + (day < 2 ? 9 : 1) + (day === 9 ? 5 : 0)),
    at(24 * day + 14.5, day === 11 ? null : 23),
  ]);
  const paired = days.flatMap((day) => [
    at(24 * day + 6, 9.5),
    at(24 * day + 7, 10.5),
    at(24 * day + 14, 20),
    at(24 * day + 15, 20),
  ]);
  const until = instant(16 * 24 * HOUR);
  const offsets = hourlyOffsets(probe, paired, { until, standardOffsetMinutes: 0 });
  expect(offsets[6]).toBeCloseTo(1, 9);
  expect(offsets[14]).toBeCloseTo(3, 9);
  expect(offsets[7]).toBeNull();
  const inZone = hourlyOffsets(probe, paired, { until, standardOffsetMinutes: -120 });
  expect(inZone[4]).toBeCloseTo(1, 9);
  // Only the first two days, as long ago as they may be, and a little longer.
  const old = (days: number) =>
    hourlyOffsets(probe.slice(0, 4), paired, {
      until: instant(days * 24 * HOUR),
      standardOffsetMinutes: 0,
    })[6];
  expect(old(15.25)).toBeCloseTo(9, 9);
  expect(old(15.3)).toBeNull();
});

const flat = Array<number | null>(24).fill(2);
const zone = { offsets: flat, standardOffsetMinutes: 0 };
const paired = [3, 4, 5, 6, 7].map((hour) => at(hour, 10));

test('a gap up to 90 minutes is a straight line; to six hours the paired probe fills it', () => {
  expect(fillGaps([at(0, 12), at(0.7, null), at(1.5, 15)], paired, zone)).toHaveLength(2);
  const filled = fillGaps([at(2, 12), at(8, 15)], paired, zone);
  expect(values(filled)).toEqual([12, 12, 12, 12, 12, 12, 15]);
  expect(filled.map((each) => each.filled)).toEqual([false, true, true, true, true, true, false]);
  expect(fillGaps([at(2, 12), at(8.1, 15)], paired, zone)).toHaveLength(2);
  expect(fillGaps([at(2.4, 12), at(4, 15)], paired, zone)).toHaveLength(3);
});

test('an hour whose offset nobody knows stays a gap', () => {
  const offsets = flat.map((offset, hour) => (hour === 5 ? null : offset));
  expect(fillGaps([at(2, 12), at(8, 15)], paired, { ...zone, offsets })).toHaveLength(6);
});

// Twelve degrees all day; the sun rises at six.
const day = { from: instant(0), to: instant(24 * HOUR), rise: instant(6 * HOUR), lower: 10 };
const read = (from: number, to: number) =>
  Array.from({ length: Math.round((to - from) * 2) + 1 }, (_, index) => ({
    ...at(from + index / 2, 12),
    filled: false,
  }));

test('a day read throughout is read; a small gap in it is unknown, a filled one counted', () => {
  const whole = { degreeDays: 2, basis: 'read', filled: 0, guessed: 0, unknown: 0, variance: 0 };
  expect(dayHeat({ ...day, readings: read(0, 24) })).toEqual(whole);
  const gap = dayHeat({ ...day, readings: [...read(0, 18), ...read(21, 24)] });
  expect(gap).toMatchObject({ basis: 'read', unknown: 3 / 24 });
  expect(gap.degreeDays).toBeCloseTo((2 * 21) / 24, 9);
  const filled = dayHeat({
    ...day,
    readings: read(0, 24).map((each) => ({
      ...each,
      filled: each.t > 18 * HOUR && each.t < 21 * HOUR,
    })),
  });
  expect(filled).toMatchObject({ basis: 'read', unknown: 0, filled: 3 / 24 });
});

test.for([
  [
    'six hours and six minutes',
    [...read(0, 16.5), { ...at(16.9, 12), filled: false }],
    read(23, 24),
    true,
  ],
  ['six hours', read(0, 17), read(23, 24), false],
  ['all of dawn', read(0, 4), read(8, 24), true],
  ['dawn but its end', read(0, 4), read(7.5, 24), false],
  ['dawn but its beginning', read(0, 4.5), read(8, 24), false],
  ['all of noon to four', read(0, 12), read(16, 24), true],
  ['noon to half past three', read(0, 12), read(15.5, 24), false],
  ['half past twelve to four', read(0, 12.5), read(16, 24), false],
  [
    'six past twelve to four',
    [...read(0, 12), { ...at(12.1, 12), filled: false }],
    read(16, 24),
    false,
  ],
  ['the night before dawn', [], read(6.5, 24), true],
  ['the evening', read(0, 17.5), [], true],
] as const)('a gap of %s: the day has to be guessed', ([, before, after, guessed]) => {
  const heat = dayHeat({ ...day, readings: [...before, ...after] });
  expect(heat.basis).toBe(guessed ? 'unknown' : 'read');
});

test('a guessed day comes from its extremes by a sine, else from its normal, and says how unsure', () => {
  const readings = read(0, 4);
  const extremes = { min: 4, max: 20, sd: 0.7 };
  const normal = { degreeDays: 3.5, sd: 1.2 };
  const sine = dayHeat({ ...day, readings, extremes, normal });
  expect(sine).toMatchObject({ basis: 'extremes', guessed: 1, unknown: 0 });
  expect(sine.degreeDays).toBe(degreeDaysSine({ min: 4, max: 20, lower: 10 }));
  expect(sine.variance).toBeCloseTo(0.49, 12);
  const usual = dayHeat({ ...day, readings, normal });
  expect(usual).toMatchObject({ basis: 'normal', degreeDays: 3.5, guessed: 1 });
  expect(usual.variance).toBeCloseTo(1.44, 12);
  expect(dayHeat({ ...day, readings })).toMatchObject({ degreeDays: null, unknown: 1 });
});

const one = (guessed: number): DayHeat => ({
  degreeDays: 2 as DayHeat['degreeDays'],
  basis: 'read',
  filled: 0.5,
  guessed,
  unknown: 0,
  variance: 0.25,
});

test('a batch sums its days and teaches while no more than 15 % is guessed', () => {
  const twenty = [...Array<DayHeat>(17).fill(one(0)), ...Array<DayHeat>(3).fill(one(1))];
  expect(batchHeat(twenty)).toEqual({
    degreeDays: 40,
    filled: 0.5,
    guessed: 0.15,
    unknown: 0,
    variance: 5,
    teaches: true,
  });
  expect(batchHeat([...twenty.slice(0, 19), one(1)]).teaches).toBe(true);
  expect(batchHeat([...twenty, one(0.2)]).teaches).toBe(false);
  expect(batchHeat([...twenty, { ...one(0), degreeDays: null }])).toMatchObject({
    degreeDays: null,
    teaches: false,
  });
  expect(batchHeat([]).teaches).toBe(false);
});
