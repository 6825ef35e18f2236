import { Body, Observer, SearchRiseSet } from 'astronomy-engine';
import fc from 'fast-check';
import { getTimes } from 'suncalc';
import { expect, test } from 'vitest';
import { dayLength, sunTimes } from '../../../rules/heat/index.ts';
import { instant } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

const DAY = 86_400_000;

test.for(truth('heat/dayLength.csv', ['latitude', 'day', 'depth', 'hours']))(
  'day $day at $latitude° is $hours h long, to $depth° below the horizon',
  ({ latitude, day, depth, hours }) => {
    expect(Math.abs(dayLength(latitude, day, depth) - hours)).toBeLessThan(1e-5);
    if (depth === 0.8333) expect(dayLength(latitude, day)).toBe(dayLength(latitude, day, depth));
  },
);

test('the last day of a leap year is as long as that of any other', () => {
  expect(dayLength(45, 366)).toBe(dayLength(45, 365));
});

test.for(truth('heat/sunTimes.csv', ['lat', 'lon'], ['noon', 'rise', 'set']))(
  'at $lat, $lon the sun rises $rise and sets $set, to 10 s',
  ({ lat, lon, noon, rise, set }) => {
    const times = sunTimes(instant(Date.parse(noon)), lat, lon);
    expect(Math.abs((times.rise ?? 0) - Date.parse(rise))).toBeLessThan(10_000);
    expect(Math.abs((times.set ?? 0) - Date.parse(set))).toBeLessThan(10_000);
  },
);

test('agrees with suncalc to 5 s all over the year and the farmed world', () => {
  for (let lat = -50; lat <= 60; lat += 10) {
    for (const lon of [-175, -120, -60, 0, 45, 100, 150, 179]) {
      for (let day = 0; day < 365; day += 13) {
        const noon = Date.UTC(2025, 0, 1, 12) + day * DAY - (lon / 360) * DAY;
        const ours = sunTimes(instant(noon), lat, lon);
        const theirs = getTimes(new Date(noon), lat, lon);
        expect(Math.abs((ours.rise ?? 0) - (theirs.sunrise?.getTime() ?? 0))).toBeLessThan(5_000);
        expect(Math.abs((ours.set ?? 0) - (theirs.sunset?.getTime() ?? 0))).toBeLessThan(5_000);
      }
    }
  }
});

test('agrees with astronomy-engine, another route to the sun, to 10 s from 50° S to 60° N', () => {
  for (let lat = -50; lat <= 60; lat += 22) {
    for (const lon of [-120, 0, 100]) {
      for (let day = 0; day < 365; day += 31) {
        const noon = Date.UTC(2025, 0, 1, 12) + day * DAY - (lon / 360) * DAY;
        const ours = sunTimes(instant(noon), lat, lon);
        const there = new Observer(lat, lon, 0);
        const from = new Date(noon - DAY / 2);
        const rise = SearchRiseSet(Body.Sun, there, +1, from, 1)?.date.getTime() ?? 0;
        const set = SearchRiseSet(Body.Sun, there, -1, new Date(noon), 1)?.date.getTime() ?? 0;
        expect(Math.abs((ours.rise ?? 0) - rise)).toBeLessThan(10_000);
        expect(Math.abs((ours.set ?? 0) - set)).toBeLessThan(10_000);
      }
    }
  }
});

test('where the sun stays down, or up, there is no rise and no set', () => {
  const none = { rise: null, set: null };
  expect(sunTimes(instant(Date.UTC(2025, 11, 21, 12)), 70, 20)).toEqual(none);
  expect(sunTimes(instant(Date.UTC(2025, 5, 21, 12)), 70, 20)).toEqual(none);
});

test('any moment of the solar day gives the sun times around its noon', () => {
  const moment = fc.integer({ min: Date.UTC(2020, 0, 1), max: Date.UTC(2035, 0, 1) });
  const lat = fc.double({ min: -60, max: 60, noNaN: true });
  const lon = fc.double({ min: -180, max: 180, noNaN: true });
  fc.assert(
    fc.property(moment, lat, lon, (ms, latitude, longitude) => {
      const { rise, set } = sunTimes(instant(ms), latitude, longitude);
      if (rise === null || set === null) return false;
      const noon = (rise + set) / 2;
      // 10 minutes: near a pole the two halves of a day are not quite alike.
      return rise < set && Math.abs(ms - noon) <= DAY / 2 + 600_000;
    }),
  );
});

test('the two ways of reckoning the length of a day agree to six minutes up to 50°', () => {
  for (let lat = -50; lat <= 50; lat += 5) {
    for (let day = 1; day <= 365; day += 7) {
      const { rise, set } = sunTimes(instant(Date.UTC(2025, 0, day, 12)), lat, 0);
      const hours = ((set ?? 0) - (rise ?? 0)) / 3_600_000;
      expect(Math.abs(dayLength(lat, day) - hours)).toBeLessThan(0.1);
    }
  }
});

test('places off the globe are refused', () => {
  expect(() => sunTimes(instant(0), 91, 0)).toThrow('Expected latitude from -90 to 90 °, got 91');
  expect(() => sunTimes(instant(0), 0, 200)).toThrow(RangeError);
  expect(() => dayLength(45, 0)).toThrow('Expected day of the year from 1 to 366');
});
