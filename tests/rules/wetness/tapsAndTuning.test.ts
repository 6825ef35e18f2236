import fc from 'fast-check';
import { expect, test } from 'vitest';
import { HOUR } from '../../../rules/units.ts';
import {
  layTap,
  signsByHumidity,
  tapWetness,
  tuneThreshold,
  type Window,
  wetHoursBounds,
  wetPieces,
} from '../../../rules/wetness/index.ts';
import { at, reading } from './series.ts';

const window = (from: number, to: number): Window => ({ from: at(from), to: at(to) });
/** A reading every 15 minutes. */
const air = (from: number, to: number, humidity: (hour: number) => number) =>
  Array.from({ length: Math.round((to - from) * 4) }, (_, n) => {
    const hour = from + n / 4;
    return reading(hour, 15, humidity(hour));
  });
const hoursOf = ({ from, least, most }: ReturnType<typeof tapWetness>) =>
  [from, least, most].map((t) => (t - at(0)) / HOUR);
const rain = (from: number, to: number) => ({ kind: 'rain' as const, from: at(from), to: at(to) });

test('after rain leaves stay wet until 2 h of air under 87 % by daylight', () => {
  const light = [window(6, 20)];
  // Rain 8 to 9, air damp until 11: wet until 13.
  const readings = air(0, 24, (hour) => (hour < 11 ? 95 : 86.9));
  expect(hoursOf(tapWetness(rain(8, 9), readings, light, at(24)))).toEqual([8, 13, 13]);
  // 87 % itself does not dry.
  const damp = air(0, 24, (hour) => (hour < 11 ? 95 : 87));
  expect(hoursOf(tapWetness(rain(8, 9), damp, light, at(24)))).toEqual([8, 24, 24]);
});

test('dry air at night, or broken off by damp, does not dry after rain', () => {
  const readings = air(0, 40, () => 80);
  // Rain until 19, dark from 20 to 30 (06:00): one hour in the evening is not enough.
  const light = [window(6, 20), window(30, 44)];
  expect(hoursOf(tapWetness(rain(18, 19), readings, light, at(40)))).toEqual([18, 32, 32]);
  const broken = air(0, 24, (hour) => (hour >= 10.5 && hour < 11 ? 95 : 80));
  expect(hoursOf(tapWetness(rain(8, 9), broken, [window(6, 20)], at(24)))).toEqual([8, 13, 13]);
});

test('while readings are missing nobody can say it dried', () => {
  const light = [window(6, 20)];
  const readings = air(0, 24, () => 80).filter(({ t }) => t < at(9) || t >= at(12));
  expect(hoursOf(tapWetness(rain(8, 9), readings, light, at(24)))).toEqual([8, 11, 14]);
  expect(hoursOf(tapWetness(rain(8, 9), [], light, at(24)))).toEqual([8, 11, 24]);
});

test('a reading still speaks for 30 minutes of drying, not longer', () => {
  const readings = [
    reading(9, 15, 80),
    reading(9.5, 15, 80),
    reading(10, 15, 80),
    reading(10.5, 15, 80),
  ];
  const seen = tapWetness(rain(8, 9), readings, [window(6, 20)], at(24));
  expect(hoursOf(seen)).toEqual([8, 11, 11]);
  const early = tapWetness(rain(8, 9), readings.slice(0, 3), [window(6, 20)], at(24));
  expect(hoursOf(early)).toEqual([8, 11, 24]);
});

test('after watering leaves are wet for 2 h, or until 1 h of air under 87 %, whichever is later', () => {
  const tap = { kind: 'watering' as const, at: at(8) };
  expect(
    hoursOf(
      tapWetness(
        tap,
        air(0, 24, () => 80),
        [],
        at(24),
      ),
    ),
  ).toEqual([8, 10, 10]);
  const damp = air(0, 24, (hour) => (hour < 12 ? 95 : 80));
  expect(hoursOf(tapWetness(tap, damp, [], at(24)))).toEqual([8, 13, 13]);
  expect(hoursOf(tapWetness(tap, damp, [], at(9)))).toEqual([8, 9, 9]);
});

test('a tap laid over humidity makes its time wet, and more never dry', () => {
  const readings = air(0, 24, (hour) => (hour < 3 ? 95 : 80));
  const pieces = wetPieces(signsByHumidity(readings, { at: 90, below: 87 }), window(0, 24));
  expect(wetHoursBounds(layTap(pieces, { from: at(8), least: at(11), most: at(14) }))).toEqual([
    6, 9,
  ]);
  fc.assert(
    fc.property(fc.tuple(fc.nat(24), fc.nat(24), fc.nat(24)), (hours) => {
      const [a = 0, b = 0, c = 0] = hours.toSorted((x, y) => x - y);
      const laid = layTap(pieces, { from: at(a), least: at(b), most: at(c) });
      const [before, after] = [wetHoursBounds(pieces), wetHoursBounds(laid)];
      const whole = laid.reduce((sum, { from, to }) => sum + to - from, 0) / HOUR;
      return after[0] >= before[0] && after[1] >= before[1] && whole === 24;
    }),
  );
});

test('rain that ends before it began is refused', () => {
  expect(() => tapWetness(rain(9, 8), [], [], at(24))).toThrow('Expected rain to end from');
});

// One morning a day, at 07:00, whose humidity has been `level` since the evening before.
const mornings = (levels: readonly number[]) =>
  levels.flatMap((level, day) =>
    air(day * 24, day * 24 + 9, (h) => (h < day * 24 + 1 ? 60 : level)),
  );
const notes = (seen: readonly boolean[]) => seen.map((wet, day) => ({ t: at(day * 24 + 7), wet }));

test('notes of wet and dry mornings say which threshold suits the place', () => {
  // Wet at 86 and more, dry at 85.5 and less: 86 agrees with all of them.
  const levels = [86, 86.4, 88, 92, 97, 85.5, 85, 84, 83, 70];
  const tuned = tuneThreshold(notes(levels.map((level) => level >= 86)), mornings(levels));
  expect(tuned).toMatchObject({ suggested: 86, notes: 10 });
  expect(tuned.agreed.map(({ at: each }) => each)).toEqual([
    82, 83, 84, 85, 86, 87, 88, 89, 90, 91, 92, 93, 94, 95,
  ]);
  // Counted by hand: at 90 the mornings at 86, 86.4 and 88 % are taken for dry.
  expect(tuned.agreed.find((each) => each.at === 90)?.notes).toBe(7);
});

test('ties go to 90, then to the nearest of it', () => {
  const seen = [true, true, true, true, true, false, false, false, false, false];
  const all = tuneThreshold(notes(seen), mornings(seen.map((wet) => (wet ? 99 : 60))));
  expect(all.suggested).toBe(90);
  // Agreeing from 91 on alike: the nearest to 90 is 91. Up to 88 alike: 88.
  const high = tuneThreshold(notes(seen), mornings(seen.map((wet) => (wet ? 99 : 90.5))));
  expect(high.suggested).toBe(91);
  const low = tuneThreshold(notes(seen), mornings(seen.map((wet) => (wet ? 88.5 : 60))));
  expect(low.suggested).toBe(88);
});

test('leaves that were wet in the evening stay so until 3 % under the threshold', () => {
  // 95 % at 01:00, then 87 %: wet for any threshold up to 90, where 87 is the release.
  const readings = Array.from({ length: 10 }, (_, day) =>
    air(day * 24, day * 24 + 9, (h) => (h < day * 24 + 2 ? 95 : 87)),
  ).flat();
  const tuned = tuneThreshold(notes(Array(10).fill(true)), readings);
  expect(tuned.agreed.filter((each) => each.notes === 10).map((each) => each.at)).toEqual([
    82, 83, 84, 85, 86, 87, 88, 89, 90,
  ]);
});

test('with fewer than ten usable notes nothing is suggested', () => {
  const levels = [99, 99, 99, 99, 99, 60, 60, 60, 60, 60];
  const readings = mornings(levels);
  const seen = levels.map((level) => level > 90);
  expect(tuneThreshold(notes(seen).slice(1), readings)).toMatchObject({
    suggested: null,
    notes: 9,
  });
  // A note on a morning without readings is no note.
  const silent = readings.filter(({ t }) => t < at(9 * 24));
  expect(tuneThreshold(notes(seen), silent)).toMatchObject({ suggested: null, notes: 9 });
  for (const maxGapMinutes of [0.9, 1441])
    expect(() => tuneThreshold([], [], { maxGapMinutes })).toThrow(RangeError);
  for (const maxGapMinutes of [1, 1440])
    expect(tuneThreshold([], [], { maxGapMinutes }).suggested).toBeNull();
});

test('how leaves were is looked for up to 48 h back', () => {
  // 95 % once, then 88 %: between the levels of 90 %, so only the start tells.
  const since = (back: number) => [
    reading(100 - back, 15, 95),
    ...air(100 - back + 0.25, 100, () => 88),
    reading(100, 15, 88),
  ];
  const seen = [{ t: at(100), wet: true }];
  expect(tuneThreshold(seen, since(48)).notes).toBe(1);
  expect(tuneThreshold(seen, since(48.25)).notes).toBe(0);
});

test('of rare readings each speaks for 30 minutes of drying and no more', () => {
  const light = [window(6, 20)];
  const readings = (last: number) => [9, 9.5, 10, last].map((hour) => reading(hour, 15, 80));
  expect(hoursOf(tapWetness(rain(8, 9), readings(10.5), light, at(24)))[2]).toBe(11);
  // Seven seconds short of two hours.
  expect(hoursOf(tapWetness(rain(8, 9), readings(10.495), light, at(24)))[2]).toBe(24);
});

test('leaves are let go a hair under 3 % below the threshold', () => {
  const readings = Array.from({ length: 10 }, (_, day) =>
    air(day * 24, day * 24 + 9, (h) => (h < day * 24 + 2 ? 95 : 86.95)),
  ).flat();
  const tuned = tuneThreshold(notes(Array(10).fill(true)), readings);
  expect(tuned.agreed.filter((each) => each.notes === 10).map((each) => each.at)).toEqual([
    82, 83, 84, 85, 86, 87, 88, 89,
  ]);
});

test('a note counts while readings are up to 30 minutes apart, when no step is told', () => {
  const morning = (last: number) => [
    ...Array.from({ length: 12 }, (_, n) => reading(90 + n / 4, 15, 95)), // until 92:45
    reading(92.75 + last, 15, 60),
  ];
  const seen = [{ t: at(93.1), wet: true }]; // 21 minutes after the last but one
  expect(tuneThreshold(seen, morning(0.5)).notes).toBe(1);
  expect(tuneThreshold(seen, morning(0.505)).notes).toBe(0);
});
