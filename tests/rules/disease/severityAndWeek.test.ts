import { expect, test } from 'vitest';
import {
  earlyBlight,
  earlyBlightBounds,
  earlyBlightSeverity,
  greyMouldHouse,
  outbreakWeek,
  weekMeans,
} from '../../../rules/disease/index.ts';
import { celsius, hours } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';
import { circumstances, piece } from './circumstances.ts';

test.for(truth('disease/earlyBlight.csv', ['air_c', 'wet_h', 'severity']))(
  'early blight: $wet_h wet hours at $air_c °C count $severity',
  ({ air_c, wet_h, severity }) => {
    expect(earlyBlightSeverity(celsius(air_c), hours(wet_h))).toBe(severity);
  },
);

test('early blight of a day: one number when all is known, a range when not', () => {
  const known = (...wetness: ReturnType<typeof piece>[]) => circumstances([], { wetness });
  expect(earlyBlightBounds(known(piece('wet', 0, 10, 15), piece('dry', 10, 24, 20)))).toEqual([
    1, 1,
  ]);
  expect(
    earlyBlightBounds(
      known(piece('wet', 0, 5, 10), piece('wet', 5, 16, 28), piece('dry', 16, 24, 20)),
    ),
  ).toEqual([3, 3]);
  expect(
    earlyBlightBounds(
      known(piece('wet', 0, 8, 23), piece('unknown', 8, 14, 23), piece('dry', 14, 24, 20)),
    ),
  ).toEqual([2, 3]);
  expect(earlyBlightBounds(known(piece('dry', 0, 24, 20)))).toEqual([0, 0]);
  expect(earlyBlightBounds(known())).toEqual([0, 4]);
  expect(earlyBlightBounds(known(piece('unknown', 0, 24, -30, 60)))).toEqual([0, 4]);
  // The best temperature of a range may lie inside it: 10 to 40 °C holds 23 °C.
  expect(earlyBlightBounds(known(piece('wet', 0, 22, 10, 40), piece('dry', 22, 24, 20)))).toEqual([
    0, 4,
  ]);
  expect(earlyBlight.judge(known(piece('wet', 0, 10, 15), piece('dry', 10, 24, 20)))).toMatchObject(
    {
      risk: null,
      because: [
        { value: 1, limit: 4 },
        { value: 1, limit: 4 },
      ],
    },
  );
  expect(earlyBlightSeverity(null, hours(3))).toBeNull();
});

test.for(truth('disease/outbreakWeek.csv', ['wet_h', 'night_h'], ['verdict']))(
  'a week of $wet_h wet hours and $night_h mild night hours a day: $verdict',
  ({ wet_h, night_h, verdict }) => {
    expect(outbreakWeek([wet_h, wet_h], [night_h, night_h])).toBe(verdict);
    const week = Array.from({ length: 7 }, () => ({
      wetHours: [wet_h, wet_h] as const,
      nightHours: [night_h, night_h] as const,
      unknownHours: 0,
    }));
    expect(greyMouldHouse.judge(circumstances([], { week })).verdict).toBe(verdict);
  },
);

test('the weekly warning needs five days of which half is known', () => {
  const wetDay = (unknownHours: number) => ({
    wetHours: [8, 8 + unknownHours] as const,
    nightHours: [10, 10] as const,
    unknownHours,
  });
  const week = (...unknown: number[]) =>
    greyMouldHouse.judge(circumstances([], { week: unknown.map(wetDay) }));
  expect(week(0, 0, 0, 0)).toMatchObject({ verdict: 'unknown', missing: ['five-known-days'] });
  expect(week(0, 0, 0, 0, 12)).toMatchObject({ verdict: 'yes', risk: { least: 'watch' } });
  expect(week(0, 0, 0, 0, 12.1).verdict).toBe('unknown');
  expect(weekMeans([wetDay(0), wetDay(0), wetDay(0), wetDay(0), wetDay(10)])?.wetHours).toEqual([
    8, 10,
  ]);
  expect(outbreakWeek([6, 8], [10, 10])).toBe('unknown');
});
