import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  conditionalOdds,
  dateOffsets,
  firstFrostFit,
  frostBefore,
  frostDateCurve,
  frostDateQuantile,
  frostDates,
  frostShare,
  riskOverYears,
  seasonDay,
  siteFromStation,
  thresholdAtStation,
  weibullQuantile,
} from '../../../rules/frost/index.ts';
import { dayAt, dayNumber } from '../../../rules/heat/index.ts';
import { truth } from '../../truth/index.ts';

const dates = truth('frost/firstFrost.csv', ['day']).map(({ day }) => day);
const fit = firstFrostFit(dates) ?? { mean: 0, sd: 0, n: 0 };

test.for(truth('frost/seasonDay.csv', ['season', 'season_day'], ['day', 'hemisphere', 'half']))(
  '$day is day $season_day of the season $season in the $hemisphere',
  (row) => {
    expect(seasonDay(row.day, row.hemisphere as 'north')).toEqual({
      season: row.season,
      day: row.season_day,
      half: row.half,
    });
  },
);

test('days follow one another through a season', () => {
  fc.assert(
    fc.property(fc.integer({ min: -30_000, max: 60_000 }), (number) => {
      for (const hemisphere of ['north', 'south'] as const) {
        const [a, b] = [number, number + 1].map((each) => seasonDay(dayAt(each), hemisphere));
        const goesOn = b?.season === a?.season && b?.day === Number(a?.day) + 1;
        const begins = b?.season === Number(a?.season) + 1 && b?.day === 0;
        if (!goesOn && !begins) return false;
      }
      return true;
    }),
  );
});

test('fifteen seasons: mean 107.8, spread 8.6206', () => {
  expect(fit.mean).toBeCloseTo(107.8, 9);
  expect(fit.sd).toBeCloseTo(8.620573, 6);
  expect(fit.n).toBe(15);
  expect(firstFrostFit([100])).toBeNull();
});

test.for(truth('frost/frostDateQuantile.csv', ['p', 'normal', 'predictive', 'weibull']))(
  'the first frost has come with chance $p by day $predictive',
  (row) => {
    for (const form of ['normal', 'predictive', 'weibull'] as const) {
      expect(frostDateQuantile(dates, row.p, { form })).toBeCloseTo(row[form], 5);
    }
    expect(frostDateQuantile(dates, row.p)).toBeCloseTo(row.predictive, 5);
    const curve = frostDateCurve(fit);
    expect(frostBefore(curve, row.predictive)).toBeCloseTo(row.p, 6);
  },
);

test('fourteen to eight seasons are counted, seven tell nothing', () => {
  // Weibull: position 0.2 x 9 = 1.8, between 93 and 97, by hand.
  const eight = [99, 108, 93, 120, 106, 113, 102, 97];
  expect(frostDateQuantile(eight, 0.2)).toBeCloseTo(96.2, 9);
  expect(frostDateQuantile(dates.slice(0, 14), 0.5)).toBe(weibullQuantile(dates.slice(0, 14), 0.5));
  expect(frostDateQuantile(eight, 0.1)).toBeNull();
  expect(frostDateQuantile(eight.slice(0, 7), 0.5)).toBeNull();
});

test('where some seasons have no frost, its chance never passes their share', () => {
  expect(frostDateQuantile(dates, 0.8, { share: 0.8 })).toBeNull();
  // 0.08 of all is a tenth of the seasons that freeze.
  expect(frostDateQuantile(dates, 0.08, { share: 0.8 })).toBeCloseTo(95.824805, 5);
  expect(frostBefore(frostDateCurve(fit), 366, 0.8)).toBeCloseTo(0.8, 9);
});

test('counting does not go beyond what was counted', () => {
  expect(weibullQuantile([3, 1, 2], 0.25)).toBe(1);
  expect(weibullQuantile([3, 1, 2], 0.75)).toBe(3);
  expect(weibullQuantile([3, 1, 2], 0.24)).toBeNull();
  expect(weibullQuantile([3, 1, 2], 0.76)).toBeNull();
  expect(weibullQuantile([], 0.5)).toBeNull();
});

test('the normal curve: 0.3748 and 0.7720 for the week from days 101 and 116', () => {
  // SciPy 1.17 (stats.norm); the t says 0.3630 and 0.7052.
  const normal = frostDateCurve(fit, 'normal');
  const week = (curve: typeof normal, day: number) =>
    conditionalOdds({
      now: 1 - frostBefore(curve, day),
      later: 1 - frostBefore(curve, day + 7),
    });
  expect(week(normal, 101)).toBeCloseTo(0.374758, 6);
  expect(week(normal, 116)).toBeCloseTo(0.771995, 6);
  expect(week(frostDateCurve(fit), 101)).toBeCloseTo(0.363037, 6);
  expect(week(frostDateCurve(fit), 116)).toBeCloseTo(0.705217, 6);
});

test('one season in five over five years, one in ten over ten', () => {
  expect(riskOverYears(0.2, 5)).toBeCloseTo(0.67232, 9);
  expect(riskOverYears(0.1, 10)).toBeCloseTo(0.651322, 6);
  expect(riskOverYears(null, 10)).toBeNull();
});

test('a site that freezes a week before its station: N(100.4, 9.3824)', () => {
  const site = siteFromStation(fit, [-6, -9, -4, -11, -7]);
  if (site === null) throw new Error('Expected a site, got null');
  expect(site.mean).toBeCloseTo(100.4, 9);
  expect(site.sd).toBeCloseTo(9.382354, 6);
  expect(frostBefore(site, 93)).toBeCloseTo(0.215139, 6); // SciPy 1.17 (stats.norm)
  const spared = (day: number) => 1 - frostBefore(site, day);
  expect(conditionalOdds({ now: spared(93), later: spared(100) })).toBeCloseTo(0.34128, 5);
  expect(siteFromStation(fit, [-6, -9])).toBeNull();
  expect(siteFromStation(fit, [-6, -6, -6])?.sd).toBeCloseTo(fit.sd * Math.sqrt(16 / 15), 9);
});

test('offsets come from the seasons both have', () => {
  const own = [
    { season: 2021, day: 90 },
    { season: 2022, day: null },
    { season: 2023, day: 95 },
  ];
  const station = [
    { season: 2020, day: 99 },
    { season: 2021, day: 96 },
    { season: 2022, day: 90 },
    { season: 2023, day: 102 },
  ];
  expect(dateOffsets(own, station)).toEqual([-6, -7]);
  // A site 1.5 K colder than its station freezes when the station reads 1.5.
  expect(thresholdAtStation(0, [-1, -1.5, -2.2])).toBe(1.5);
  expect(thresholdAtStation(0, [])).toBeNull();
});

// A season of lows at 5 °C but for the nights named.
function season(from: string, lows: Record<string, number | null>) {
  return Array.from({ length: 365 }, (_, index) => {
    const night = dayAt(dayNumber(from) + index);
    return { night, low: lows[night] === undefined ? 5 : lows[night] };
  });
}
const north = { threshold: 0, hemisphere: 'north' } as const;

test('first and last frosts, either hemisphere', () => {
  const winter = season('2024-07-01', {
    '2024-10-20': -1,
    '2024-10-12': 0,
    '2025-01-03': -6,
    '2025-04-28': -0.5,
    '2025-04-14': -3,
  });
  const first = frostDates(winter, { ...north, side: 'first' });
  expect(first).toEqual([{ season: 2024, day: 103, frost: true, missing: 0 }]);
  expect(frostDates(winter, { ...north, side: 'last' })[0]?.day).toBe(301);
  expect(frostDates(winter, { ...north, threshold: -2.2, side: 'first' })[0]?.day).toBe(186);
  const south = season('2024-01-01', { '2024-05-12': -1, '2024-06-30': -2, '2024-09-01': -1 });
  const rule = { threshold: 0, hemisphere: 'south' } as const;
  expect(frostDates(south, { ...rule, side: 'first' })[0]?.day).toBe(132);
  expect(frostDates(south, { ...rule, side: 'last' })[0]?.day).toBe(244);
});

test('a last frost is one after midwinter', () => {
  const autumnOnly = season('2024-07-01', { '2024-12-31': -1 });
  expect(frostDates(autumnOnly, { ...north, side: 'last' })[0]).toMatchObject({
    day: null,
    frost: false,
  });
  const south = season('2024-01-01', { '2024-06-29': -1 });
  expect(frostDates(south, { threshold: 0, hemisphere: 'south', side: 'last' })[0]?.frost).toBe(
    false,
  );
});

test.for([
  ['north', 'first', '2023-07-01', '2023-08-31', '2023-12-31'],
  ['north', 'last', '2023-07-01', '2023-12-31', '2024-05-30'],
  ['south', 'first', '2023-01-01', '2023-02-28', '2023-06-30'],
  ['south', 'last', '2023-01-01', '2023-06-30', '2023-11-30'],
] as const)(
  'in the %s six nights missing inside the window of the %s frost leave no date',
  ([hemisphere, side, begins, before, last]) => {
    const gone = (from: number, to: number) => {
      const lows: Record<string, null> = {};
      for (let number = from; number <= to; number += 1) lows[dayAt(number)] = null;
      return frostDates(season(begins, lows), { threshold: 0, hemisphere, side })[0];
    };
    const [opens, shuts] = [dayNumber(before), dayNumber(last)];
    // The window begins the night after `before`: five inside it are borne, six are not.
    expect(gone(opens - 3, opens + 5)).toMatchObject({ frost: false, missing: 5 });
    expect(gone(opens - 3, opens + 6)).toMatchObject({ frost: null, missing: 6 });
    expect(gone(shuts - 4, shuts + 3)).toMatchObject({ frost: false, missing: 5 });
    expect(gone(shuts - 5, shuts + 3)).toMatchObject({ frost: null, missing: 6 });
  },
);

test('the share of seasons with frost counts half of one more', () => {
  const seasons = [true, true, false, null].map((frost) => ({ frost }));
  expect(frostShare(seasons)).toBeCloseTo(2.5 / 4, 12);
  expect(frostShare([{ frost: null }])).toBeNull();
});
