import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dayOfWeek, diseaseDay, noonToNoon } from '../../../rules/days/index.ts';
import { diseases, greyMouldHouse } from '../../../rules/disease/index.ts';
import { instant } from '../../../rules/units.ts';
import { circumstances, type day, piece, tenMinutes } from '../disease/circumstances.ts';
import { at } from '../wetness/series.ts';

const never = { event: null, looked: null };
const rounded = (numbers: readonly number[]) => numbers.map((n) => Math.round(n * 1e6) / 1e6);

test('a disease day runs from noon to noon of local standard time', () => {
  const HOUR = 3_600_000;
  const midnight = Date.UTC(2026, 5, 1); // in UTC
  const of = (hour: number, offset: number) => {
    const { from, to } = noonToNoon(instant(midnight + hour * HOUR), offset);
    return [(from - midnight) / HOUR, (to - midnight) / HOUR];
  };
  expect(of(11.99, 0)).toEqual([-12, 12]);
  expect(of(12, 0)).toEqual([12, 36]);
  expect(of(3, 0)).toEqual([-12, 12]);
  // One hour east, noon is at 11:00 UTC; nine and a half, at 02:30 UTC.
  expect(of(11, 60)).toEqual([11, 35]);
  expect(of(3, 570)).toEqual([2.5, 26.5]);
  for (const offset of [-1080.1, 1080.1])
    expect(() => noonToNoon(at(0), offset)).toThrow('Expected offset of standard time');
  for (const offset of [-1080, 1080]) expect(() => noonToNoon(at(0), offset)).not.toThrow();
});

test('every instant lies in its day, and days join', () => {
  const anyInstant = fc.integer({ min: 0, max: 4_000_000_000_000 }).map(instant);
  fc.assert(
    fc.property(anyInstant, fc.integer({ min: -720, max: 840 }), (t, offset) => {
      const { from, to } = noonToNoon(t, offset);
      return from <= t && t < to && to - from === 86_400_000 && noonToNoon(to, offset).from === to;
    }),
  );
});

test('the books of a plain day: wet from 20:00 to 05:00 at 12 °C, silent from 09:00', () => {
  const air = tenMinutes(24, (hour) =>
    hour >= 21 ? null : [12, hour >= 8 && hour < 17 ? 96 : 70],
  );
  const books = diseaseDay(circumstances(air), diseases, never);
  expect(books.knownMinutes).toBeCloseTo(21 * 60, 6);
  expect(books.unknownMinutes).toBeCloseTo(3 * 60, 6);
  expect(books.wetMinutes).toBeCloseTo(9 * 60, 6);
  expect(books.knownHours).toBe(21);
  expect(rounded(books.wetHours)).toEqual([9, 12]);
  expect(books.spells).toHaveLength(2);
  expect(books.spells[0]).toMatchObject({
    from: at(8),
    to: at(17),
    temperature: { mean: 12, min: 12, max: 12 },
  });
  expect(rounded(books.spells[0]?.wetHours ?? [])).toEqual([9, 9]);
  expect(books.spells[1]).toMatchObject({ temperature: null }); // only possible
  expect(rounded(books.spells[1]?.wetHours ?? [])).toEqual([0, 3]);
  expect(rounded(books.nightHours)).toEqual([14, 14]);
  expect(rounded(books.darkDampHours)).toEqual([9, 9]);
  expect(rounded(books.trayDampHours)).toEqual([0, 3]);
  expect(Object.keys(books.judgements).toSorted()).toEqual(diseases.map(({ id }) => id).toSorted());
  expect(books).toMatchObject({ daysSinceEvent: null, daysSinceLooked: null });
});

test('night hours are those from 9 to 21 °C between 18:00 and 08:00', () => {
  // Yunis et al. 1994.
  const hoursAt = (t: number) =>
    rounded(diseaseDay(circumstances(tenMinutes(24, () => [t, 70])), [], never).nightHours)[0];
  expect([hoursAt(9), hoursAt(21), hoursAt(8.9), hoursAt(21.1)]).toEqual([14, 14, 0, 0]);
  const mildBetween = (from: number, to: number) =>
    diseaseDay(
      circumstances(tenMinutes(24, (hour) => [hour >= from && hour < to ? 12 : 25, 70])),
      [],
      never,
    ).nightHours;
  expect(rounded(mildBetween(0, 6))).toEqual([0, 0]);
  expect(rounded(mildBetween(6, 20))).toEqual([14, 14]);
  expect(rounded(mildBetween(20, 24))).toEqual([0, 0]);
  expect(rounded(mildBetween(0, 7))).toEqual([1, 1]);
});

test('dark hours at 95 % and more, from 20:00 to 08:00 where no sun times are known', () => {
  const damp = (humidity: number, dark: typeof day | null) =>
    rounded(
      diseaseDay(
        circumstances(
          tenMinutes(24, () => [12, humidity]),
          { dark },
        ),
        [],
        never,
      ).darkDampHours,
    )[0];
  expect(damp(95, null)).toBe(12);
  expect(damp(94.9, null)).toBe(0);
  expect(damp(95, { from: at(9), to: at(15) })).toBe(6);
  const early = tenMinutes(24, (hour) => [12, hour < 8.5 ? 99 : 70]);
  expect(
    rounded(diseaseDay(circumstances(early, { dark: null }), [], never).darkDampHours),
  ).toEqual([0.5, 0.5]);
});

test('an hour is known when 45 minutes of it are', () => {
  const known = (length: number) =>
    diseaseDay(
      circumstances([], {
        wetness: [piece('dry', 0, length, 12), piece('unknown', length, 24, 12)],
      }),
      [],
      never,
    ).knownHours;
  expect([known(0.74), known(0.75), known(1.7), known(1.75)]).toEqual([0, 1, 1, 2]);
});

test('a spell that a gap parts at the least and joins at the most is one spell with bounds', () => {
  const wetness = [
    piece('wet', 0, 3, 10),
    piece('unknown', 3, 8, 8, 12),
    piece('wet', 8, 10, 15),
    piece('dry', 10, 24, 20),
  ];
  const { spells } = diseaseDay(circumstances([], { wetness }), [], never);
  expect(spells).toHaveLength(1);
  expect(spells[0]?.wetHours).toEqual([3, 10]);
  expect(spells[0]?.temperature).toEqual({ mean: 12, min: 10, max: 15 });
});

test('days since the last event and since somebody looked', () => {
  const since = { event: at(-50), looked: at(20) };
  const books = diseaseDay(circumstances([]), [], since);
  expect(books).toMatchObject({
    daysSinceEvent: 3,
    daysSinceLooked: 0,
    knownMinutes: 0,
    wetHours: [0, 24],
  });
});

test('an hourly record is counted by its own step', () => {
  const hourly = tenMinutes(24, () => [12, 96]).filter((_, index) => index % 6 === 0);
  const known = circumstances(hourly, { maxGapMinutes: 60 });
  expect(rounded(diseaseDay(known, [], never).nightHours)).toEqual([14, 14]);
});

test('seven days’ books make the weekly warning', () => {
  const wetNight = tenMinutes(24, (hour) => [12, hour >= 8 && hour < 17 ? 96 : 70]);
  const one = dayOfWeek(diseaseDay(circumstances(wetNight), [], never));
  expect(one.unknownHours).toBeCloseTo(0, 6);
  const silent = wetNight.filter(({ t }) => t < at(21));
  const other = dayOfWeek(diseaseDay(circumstances(silent), [], never));
  expect(other.unknownHours).toBeCloseTo(3, 6);
  const judged = greyMouldHouse.judge(circumstances([], { week: Array(7).fill(one) }));
  expect(judged.verdict).toBe('yes'); // 9 wet hours and 14 mild night hours
});
