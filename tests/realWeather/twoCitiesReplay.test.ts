import { describe, expect, test } from 'vitest';
import { degreeDaysTriangle } from '../../rules/index.ts';
import { halfWave } from './dayCurves.ts';
import { type Line, replayed } from './replayed.ts';
import { type City, type Extremes, extremesOf } from './twoCities.ts';

// Source: daily extremes of Seattle and New York, NOAA Climate Data Online through the npm package
// vega-datasets (see twoCities.ts). At what hour they were read is not in the table: the low at six
// in the morning and the high at three in the afternoon, standard time, is ours.

const YEAR = '2014';
const HOUR = 3_600_000;
const BASE = 10;

const cities: Record<City, { zone: string; lat: number; lon: number; west: number }> = {
  Seattle: { zone: 'America/Los_Angeles', lat: 47.6, lon: -122.3, west: 8 },
  'New York': { zone: 'America/New_York', lat: 40.7, lon: -74, west: 5 },
};

const farmOf = (city: City, every: string) => `
farm: { name: Two a day, zone: ${cities[city].zone}, lat: ${cities[city].lat}, lon: ${cities[city].lon}, money: USD, wage: 16 }
places:
  - { id: outside, name: Outside, kind: outdoor }
probes:
  - { id: glass, place: outside, spot: air, every: ${every} }
`;

const lowAt = (city: City, day: string) => Date.parse(day) + (6 + cities[city].west) * HOUR;
const highAt = (city: City, day: string) => lowAt(city, day) + 9 * HOUR;
const linesOf = (city: City, days: readonly Extremes[]): Line[] =>
  days.flatMap(({ day, min, max }) => [
    { probe: 'glass', quantity: 'temperature', t: lowAt(city, day), value: min },
    { probe: 'glass', quantity: 'temperature', t: highAt(city, day), value: max },
  ]);
const daysIn = (city: City) => extremesOf(city).filter(({ day }) => day.startsWith(YEAR));

describe.for<City>(['Seattle', 'New York'])('two readings a day of %s', (city) => {
  const given = daysIn(city);

  test('are kept as the low and the high of their day', async () => {
    const { days, rejected } = await replayed(farmOf(city, '60m'), linesOf(city, given));
    const outside = days.outside ?? [];
    expect(rejected).toEqual({});
    expect(outside.map(({ day, min, max }) => ({ day, min, max }))).toEqual(given);

    const frosts = outside.filter(({ min }) => min !== null && min < 0).map(({ day }) => day);
    const counted = given.filter(({ min }) => min < 0).map(({ day }) => day);
    expect(frosts).toEqual(counted);
    console.info(
      `${city} ${YEAR}: ${frosts.length} days with frost, last of spring ` +
        `${frosts.findLast((day) => day < `${YEAR}-07`)}, first of autumn ${frosts.find((day) => day > `${YEAR}-07`)}`,
    );
  });

  test('say nothing of wetness or of heat when a reading was due every hour', async () => {
    const { days } = await replayed(farmOf(city, '60m'), linesOf(city, given));
    for (const {
      wetHours,
      longestSpellHours,
      botrytisIndex,
      degreeDays,
      unknownHours,
    } of days.outside ?? []) {
      expect({ wetHours, longestSpellHours, botrytisIndex, degreeDays }).toEqual({
        wetHours: null,
        longestSpellHours: null,
        botrytisIndex: null,
        degreeDays: null,
      });
      expect(unknownHours).toBeGreaterThanOrEqual(24 - 2 * 2.5 - 1); // 23 h on one day
    }
  });

  test('give the heat units of a triangle when three readings a day were promised', async () => {
    // 2.5 steps of 8 h are 20 h, so that the lines from low to high to low are drawn.
    const { days } = await replayed(farmOf(city, '8h'), linesOf(city, given));
    const total = (days.outside ?? []).reduce((sum, day) => sum + (day.degreeDays ?? 0), 0);
    const thresholds = { lower: BASE, upper: 1000, cutoff: 'horizontal' } as const;
    let drawn = 0;
    let closed = 0;
    for (const [i, { min, max }] of given.entries()) {
      const next = given[i + 1]?.min;
      drawn += (9 / 24) * halfWave('triangle', min, max, thresholds);
      closed += (9 / 24) * degreeDaysTriangle({ min, max, lower: BASE });
      if (next === undefined) continue;
      const [low, high] = next < max ? [next, max] : [max, next];
      drawn += (15 / 24) * halfWave('triangle', low, high, thresholds);
      closed += (15 / 24) * degreeDaysTriangle({ min: low, max: high, lower: BASE });
    }
    console.info(
      `${city} ${YEAR}: ${total.toFixed(2)} °C d through the hub, ${drawn.toFixed(2)} drawn`,
    );
    expect(total).toBeCloseTo(closed, 6);
    expect(Math.abs(total - drawn)).toBeLessThan(0.01);
  });

  test('from a probe that promises one every twelve hours are replayed too', async () => {
    const { days } = await replayed(farmOf(city, '12h'), linesOf(city, given.slice(0, 40)));
    expect(days.outside).toHaveLength(40);
  });
});
