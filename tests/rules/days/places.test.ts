import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bestPlace, heatLoad, hoursInBand, placeScore } from '../../../rules/days/index.ts';
import { leafWetRule } from '../../../rules/wetness/index.ts';
import { truth } from '../../truth/index.ts';
import { tenMinutes } from '../disease/circumstances.ts';
import { at, hourly, reading } from '../wetness/series.ts';

const day = { from: at(0), to: at(24) };
const seen = { maxGapMinutes: 60 };

test.for(
  truth('days/heatLoad.csv', ['a_c', 'b_c', 'c_c', 'd_c', 'e_c', 'limit_c', 'degree_hours']),
)('heat over $limit_c °C of $a_c, $b_c, $c_c, $d_c, $e_c °C: $degree_hours °C h', (row) => {
  const temperatures = [row.a_c, row.b_c, row.c_c, row.d_c, row.e_c];
  const readings = hourly([50, 50, 50, 50, 50], temperatures);
  // The last reading speaks for half of 120 minutes.
  const until = { from: at(0), to: at(5) };
  const load = heatLoad(readings, row.limit_c, until, { maxGapMinutes: 120 });
  const least = row.degree_hours;
  expect(load.degreeHours).toEqual([least, least]);
  expect(load).toMatchObject({ unknownHours: 0, hottest: 36 });
  expect(load.task).toBe(least >= 3 ? 'yes' : 'no');
});

test('heat asks for something from 3 °C h, or from 4 K over the limit', () => {
  const task = (over: number, hours: number) =>
    heatLoad(
      tenMinutes(24, (hour) => [hour < hours - 1e-9 ? 30 + over : 20, 50]),
      30,
      day,
    ).task;
  expect(task(1, 3)).toBe('yes');
  expect(task(1, 2 + 5 / 6)).toBe('no');
  expect(task(4, 0.5)).toBe('yes');
  expect(task(3.9, 0.5)).toBe('no');
});

test('a silent afternoon is not cool: it may have been 2 K over its edges', () => {
  const silent = (t: number, length: number) =>
    heatLoad(
      tenMinutes(24, (hour) => (hour >= 12 && hour < 12 + length ? null : [t, 50])),
      30,
      day,
    );
  expect(silent(29, 4).degreeHours[0]).toBe(0);
  expect(silent(29, 4).degreeHours[1]).toBeCloseTo(4, 6);
  expect(silent(29, 4).unknownHours).toBeCloseTo(4, 6);
  expect(silent(29, 4).task).toBe('unknown');
  expect(silent(29, 2.5).task).toBe('no');
  expect(silent(27, 11).task).toBe('no');
  expect(heatLoad([], 30, day)).toEqual({
    degreeHours: [0, 720],
    unknownHours: 24,
    hottest: null,
    task: 'unknown',
  });
});

test('limits of a heat limit, and a reading without temperature', () => {
  for (const limit of [-30.1, 60.1])
    expect(() => heatLoad([], limit, day)).toThrow('Expected heat limit');
  for (const limit of [-30, 60]) expect(() => heatLoad([], limit, day)).not.toThrow();
  const blind = [reading(0, 40, 50), reading(1, 40, 50)].map((each) => ({
    ...each,
    temperature: null,
  }));
  expect(heatLoad(blind, 30, day).hottest).toBeNull();
});

test('splitting a day never changes its degree-hours', () => {
  const series = fc.array(fc.double({ min: 20, max: 45, noNaN: true }), {
    minLength: 24,
    maxLength: 24,
  });
  fc.assert(
    fc.property(series, fc.integer({ min: 0, max: 24 }), (temperatures, hour) => {
      const readings = temperatures.map((t, index) => reading(index, t, 50));
      const sum = (from: number, to: number) =>
        heatLoad(readings, 30, { from: at(from), to: at(to) }, seen).degreeHours;
      const [a, b, whole] = [sum(0, hour), sum(hour, 24), sum(0, 24)];
      return Math.abs(a[0] + b[0] - whole[0]) < 1e-9 && Math.abs(a[1] + b[1] - whole[1]) < 1e-9;
    }),
  );
});

const week = { from: at(0), to: at(5 * 24) };
const band = { band: [18, 28] as const, wet: leafWetRule };
const air = (
  each: (hourOfDay: number) => readonly [number, number],
  skip = (_hour: number) => false,
) => tenMinutes(5 * 24, (hour) => (skip(hour) ? null : each(hour % 24)));

test('hours in band, hot, cold and wet, a day', () => {
  // 6 h at 15, 10 h at 22, 4 h at 30; of 22 °C 3 h are damp and 1 h of those wet.
  const place = air((h) => {
    if (h < 6) return [15, 60];
    if (h < 16) return [22, h < 7 ? 92 : h < 9 ? 86 : 60];
    return h < 20 ? [30, 60] : [28, 84.9];
  });
  const [tally] = hoursInBand([{ place: 'long-house', air: place }], band, week) ?? [];
  expect(tally).toMatchObject({ place: 'long-house', lowest: 15, highest: 30 });
  expect(tally?.inBand).toBeCloseTo(7 + 4, 6);
  expect(tally?.hot).toBeCloseTo(4, 6);
  expect(tally?.cold).toBeCloseTo(6, 6);
  expect(tally?.wet).toBeCloseTo(1, 6);
});

test('places are compared over hours known in all of them', () => {
  const steady = (t: number, skip?: (hour: number) => boolean) =>
    air((h) => [h < 12 ? t : 40, 60], skip);
  // The second was silent in every afternoon's heat from 12 to 16: neither has those hours.
  const silent = (hour: number) => hour % 24 >= 12 && hour % 24 < 16;
  const tallies = hoursInBand(
    [
      { place: 'a', air: steady(20) },
      { place: 'b', air: steady(20, silent) },
    ],
    band,
    week,
  );
  expect(tallies?.map(({ hot }) => Math.round(hot * 1e6) / 1e6)).toEqual([9.6, 9.6]); // 8 of 20 h
});

test('under 80 % of hours known in all, or under 5 days, nothing is compared', () => {
  const places = (hours: number) => [
    {
      place: 'a',
      air: air(
        () => [20, 60],
        (hour) => hour < hours,
      ),
    },
  ];
  expect(hoursInBand(places(24), band, week)).not.toBeNull();
  expect(hoursInBand(places(25), band, week)).toBeNull();
  expect(hoursInBand(places(0), band, { from: at(0), to: at(119.9) })).toBeNull();
  expect(hoursInBand([], band, week)).toBeNull();
});

test('an hour counts from 45 known minutes on', () => {
  // A reading a minute, damp and dry by turns of the hour so that the silent rest stays open.
  const minutes = (known: number) =>
    Array.from({ length: 5 * 24 * known }, (_, n) => {
      const hour = Math.floor(n / known);
      return reading(hour + (n % known) / 60, 20, hour % 2 === 0 ? 95 : 60);
    });
  const closely = { ...band, wet: { ...leafWetRule, maxGapMinutes: 10 } };
  expect(hoursInBand([{ place: 'a', air: minutes(45) }], closely, week)).not.toBeNull();
  expect(hoursInBand([{ place: 'a', air: minutes(44) }], closely, week)).toBeNull();
});

test('readings hours apart are shared out among the hours they speak for', () => {
  const every3 = Array.from({ length: 5 * 8 }, (_, n) => reading(3 * n, n % 8 === 0 ? 15 : 20, 60));
  const rarely = { ...band, wet: { ...leafWetRule, maxGapMinutes: 180 } };
  const [tally] = hoursInBand([{ place: 'a', air: every3 }], rarely, week) ?? [];
  // The last reading speaks for half of 180 minutes: its hours are two of 120, one of them unknown
  // by half, so 118 hours are joint. Of each day 3 h are cold.
  expect(tally?.cold).toBeCloseTo((15 * 24) / 118, 6);
  expect(tally?.inBand).toBeCloseTo((103 * 24) / 118, 6);
});

test('bands upside down and odd ceilings are refused', () => {
  expect(() => hoursInBand([], { ...band, band: [28, 18] }, week)).toThrow(
    'Expected upper end of the band from 28',
  );
  for (const low of [-30.1, 60.1])
    expect(() => hoursInBand([], { ...band, band: [low, 60] }, week)).toThrow('Expected lower end');
  expect(() => hoursInBand([], { ...band, band: [-30, 60] }, week)).not.toThrow();
  expect(() => hoursInBand([], { ...band, band: [60, 60] }, week)).not.toThrow();
  expect(() => hoursInBand([], { ...band, band: [18, 60.1] }, week)).toThrow('Expected upper end');
  for (const humidityCeiling of [0.9, 100.1])
    expect(() => hoursInBand([], { ...band, humidityCeiling }, week)).toThrow(
      'Expected humidity ceiling',
    );
  for (const humidityCeiling of [1, 100])
    expect(() => hoursInBand([], { ...band, humidityCeiling }, week)).not.toThrow();
});

test('the usual humidity ceiling is 85 %', () => {
  const at85 = (humidity: number) =>
    hoursInBand([{ place: 'a', air: air(() => [20, humidity]) }], band, week)?.[0]?.inBand ?? -1;
  expect(at85(84.9)).toBeCloseTo(24, 6);
  expect(at85(85)).toBe(0);
});

const tally = (
  place: string,
  inBand: number,
  hot: number,
  wet: number,
  lowest = 12,
  highest = 30,
) => ({
  place,
  inBand,
  hot,
  cold: 0,
  wet,
  lowest,
  highest,
});
const trays = { floor: 10, limit: 33, mouldy: false };

test('ten hours in band with 2 hot and 6 wet is 5; eleven with 4 wet is 9: move', () => {
  // By hand.
  const [a, b] = [tally('a', 10, 2, 6), tally('b', 11, 0, 4)];
  expect([placeScore(a), placeScore(b)]).toEqual([5, 9]);
  expect(bestPlace(a, [b], trays)).toEqual({ place: 'b', betterBy: 4 });
});

test('trays stay for less than 2 h a day, for a crossed floor or limit, and with mould on them', () => {
  const a = tally('a', 8, 0, 0);
  expect(bestPlace(a, [tally('b', 10, 0, 0)], trays)).toEqual({ place: 'b', betterBy: 2 });
  expect(bestPlace(a, [tally('b', 9.99, 0, 0)], trays)).toBeNull();
  expect(bestPlace(a, [tally('b', 12, 0, 0, 9.9)], trays)).toBeNull();
  expect(bestPlace(a, [tally('b', 12, 0, 0, 10)], trays)?.place).toBe('b');
  expect(bestPlace(a, [tally('b', 12, 0, 0, 12, 33.1)], trays)).toBeNull();
  expect(bestPlace(a, [tally('b', 12, 0, 0, 12, 33)], trays)?.place).toBe('b');
  expect(
    bestPlace(a, [tally('b', 12, 0, 0, -5, 40)], { floor: null, limit: null, mouldy: false })
      ?.place,
  ).toBe('b');
  expect(bestPlace(a, [tally('b', 12, 0, 0)], { ...trays, mouldy: true })).toBeNull();
  expect(bestPlace(a, [], trays)).toBeNull();
  expect(bestPlace(a, [tally('a', 12, 0, 0)], trays)).toBeNull();
  expect(bestPlace(a, [tally('b', 11, 0, 0), tally('c', 12, 0, 0)], trays)?.place).toBe('c');
});
