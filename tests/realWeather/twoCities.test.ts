import { expect, test } from 'vitest';
import { degreeDaysSine, degreeDaysTriangle, frostOdds } from '../../rules/index.ts';
import { type Cutoff, halfWave, type Shape } from './dayCurves.ts';
import { type City, type Extremes, extremesOf, provenance } from './twoCities.ts';

// Source: daily extremes of Seattle and New York, 2012 to 2015, NOAA Climate Data Online through
// the npm package vega-datasets (U.S. Government Dataset; see twoCities.ts). The heat units they
// are held against are added up step by step along the curve, in dayCurves.ts.

const CITIES: readonly City[] = ['Seattle', 'New York'];
const YEARS = ['2012', '2013', '2014', '2015'];
// An upper threshold that the summers of both cities pass, so that every cut-off has work to do.
const LOWER = 10;
const UPPER = 22;

const closedForm = { sine: degreeDaysSine, triangle: degreeDaysTriangle };
const seasonOf = (days: readonly Extremes[], year: string) =>
  days.filter(({ day }) => day >= `${year}-04-01` && day <= `${year}-10-31`);
const total = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0);

test('the package still names its source and licence', () => {
  expect(provenance()).toEqual({
    sources: ['NOAA Climate Data Online'],
    licences: ['U.S. Government Dataset'],
  });
});

test.for(CITIES)('%s has every day of four years, and no day upside down', (city) => {
  const days = extremesOf(city);
  expect(days).toHaveLength(1461); // 366 + 3 * 365
  expect(new Set(days.map(({ day }) => day)).size).toBe(1461);
  expect(days.filter(({ min, max }) => !(min <= max))).toEqual([]);
});

const cases = CITIES.flatMap((city) =>
  (['sine', 'triangle'] as const).flatMap((shape: Shape) =>
    (['horizontal', 'vertical', 'intermediate'] as const).map(
      (cutoff: Cutoff) => [city, shape, cutoff] as const,
    ),
  ),
);

test.for(cases)(
  '%s: heat units by %s with a %s cut-off are those of the drawn curve',
  ([city, shape, cutoff]) => {
    const thresholds = { lower: LOWER, upper: UPPER, cutoff };
    // A vertical cut-off jumps by 12 °C inside one of 1440 steps; the others have no jump.
    const within = cutoff === 'vertical' ? 12 / 1440 : 2e-5;
    const withinSeason = cutoff === 'vertical' ? 0.1 : 0.002;
    const said: string[] = [];
    for (const year of YEARS) {
      const days = seasonOf(extremesOf(city), year);
      const closed = days.map(({ min, max }) => closedForm[shape]({ min, max, ...thresholds }));
      // The intermediate form may fall below nothing on a hot day: then it counts nothing.
      const drawn = days.map(({ min, max }) => Math.max(0, halfWave(shape, min, max, thresholds)));
      const worst = Math.max(...closed.map((value, i) => Math.abs(value - (drawn[i] ?? 0))));
      said.push(`${year} ${total(closed).toFixed(1)} (drawn ${total(drawn).toFixed(1)})`);
      expect(worst).toBeLessThan(within);
      expect(Math.abs(total(closed) - total(drawn))).toBeLessThan(withinSeason);
    }
    console.info(`${city}, April to October, ${shape}, ${cutoff}: ${said.join(', ')} °C d`);
  },
);

test.for(CITIES)('%s: tomorrow’s minimum draws the second half of the day', (city) => {
  const thresholds = { lower: LOWER, upper: UPPER, cutoff: 'horizontal' as const };
  for (const shape of ['sine', 'triangle'] as const) {
    const days = extremesOf(city);
    for (const [i, { min, max }] of days.entries()) {
      const nextMin = days[i + 1]?.min;
      if (nextMin === undefined || nextMin > max) continue;
      const drawn =
        (halfWave(shape, min, max, thresholds) + halfWave(shape, nextMin, max, thresholds)) / 2;
      expect(closedForm[shape]({ min, max, nextMin, ...thresholds })).toBeCloseTo(drawn, 4);
    }
  }
});

test.for(CITIES)(
  '%s: the simple average never counts more than a curve, and as much on warm days',
  (city) => {
    // Mean of a convex function: McMaster & Wilhelm 1997, Agric. For. Meteorol. 87:291, method 1.
    const totals = { average: 0, sine: 0, triangle: 0 };
    for (const { min, max } of extremesOf(city)) {
      const average = Math.max(0, (min + max) / 2 - LOWER);
      totals.average += average;
      for (const shape of ['sine', 'triangle'] as const) {
        const units = closedForm[shape]({ min, max, lower: LOWER });
        totals[shape] += units;
        if (min >= LOWER) expect(units).toBeCloseTo(average, 9);
        else expect(units).toBeGreaterThanOrEqual(average - 1e-9);
      }
    }
    const { average, sine, triangle } = totals;
    console.info(
      `${city}, four years above ${LOWER} °C: average ${average.toFixed(1)}, ` +
        `triangle ${triangle.toFixed(1)}, sine ${sine.toFixed(1)} °C d`,
    );
    expect(average).toBeLessThan(triangle);
    expect(triangle).toBeLessThan(sine);
  },
);

test('four seasons of first frosts are too few to give odds, and say so', () => {
  for (const city of CITIES) {
    const dates = YEARS.map((year) => {
      const july = Date.UTC(Number(year), 6, 1);
      const first = extremesOf(city).find(({ day, min }) => Date.parse(day) >= july && min < 0);
      return (Date.parse(first?.day ?? '') - july) / 86_400_000;
    });
    console.info(`${city}: first frosts ${dates.join(', ')} days after 1 July`);
    expect(frostOdds(dates, { day: 120, days: 7 })).toBeNull();
  }
});
