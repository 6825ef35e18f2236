import { expect, test } from 'vitest';
import { createAirMass, type WeatherPiece } from '../../simulators/airMass.ts';
import { firstWeather, nextWeather, STEP, type Weather } from '../../simulators/weather.ts';

const DAY = 86_400_000;
const LAT = 52;
const LON = -10.5;
const begins = Date.parse('2026-03-01T12:00:00Z');

function days(count: number, seed: number, pieces: readonly WeatherPiece[] = []): Weather[] {
  const airMass = createAirMass(seed, pieces);
  let weather = firstWeather(begins, airMass(begins));
  const all: Weather[] = [];
  for (let step = 0; step < (count * DAY) / STEP; step++) {
    weather = nextWeather(weather, airMass(weather.t + STEP), LAT, LON);
    all.push(weather);
  }
  return all;
}

const lowest = (all: readonly Weather[]) => Math.min(...all.map(({ temperature }) => temperature));
const piece = (cloud: number, wind: number) => {
  const said = { temperature: 8, depression: 4, rain: 0, cloud, wind };
  return [{ from: begins - DAY, to: begins + 5 * DAY, ...said }];
};
const nightOf = (all: readonly Weather[]) => all.filter(({ sun }) => sun === 0);

test('one seed always gives the same weather', () => {
  expect(days(20, 11)).toEqual(days(20, 11));
});

test('another seed gives other weather', () => {
  expect(days(5, 11)).not.toEqual(days(5, 12));
});

test('a clear night is colder than a cloudy one in the same air', () => {
  const clear = days(3, 11, piece(0, 1.5));
  const cloudy = days(3, 11, piece(1, 1.5));
  expect(lowest(nightOf(cloudy)) - lowest(nightOf(clear))).toBeGreaterThan(3);
});

test('a still night is colder than a windy one under the same sky', () => {
  expect(lowest(nightOf(days(3, 11, piece(0, 1))))).toBeLessThan(
    lowest(nightOf(days(3, 11, piece(0, 7)))) - 2,
  );
});

test('on clear calm nights grass is 2 to 4 °C colder than the screen, on cloudy ones hardly', () => {
  // The 2 to 4 °C are the usual figure for clear nights: common practice, no source.
  const depth = (all: readonly Weather[]) => {
    const late = nightOf(all).slice(-60);
    return late.reduce((sum, { temperature, grass }) => sum + temperature - grass, 0) / late.length;
  };
  expect(depth(days(3, 11, piece(0, 1)))).toBeGreaterThan(2);
  expect(depth(days(3, 11, piece(0, 1)))).toBeLessThan(4);
  expect(depth(days(3, 11, piece(1, 4)))).toBeLessThan(0.7);
});

test('the dew point never passes the air temperature and humidity never 100 %', () => {
  for (const { temperature, dewPoint, humidity } of days(120, 5)) {
    expect(dewPoint).toBeLessThanOrEqual(temperature + 1e-9);
    expect(humidity).toBeGreaterThan(10);
    expect(humidity).toBeLessThanOrEqual(100);
  }
});

test('days are warmer than nights and the season warms from March to July', () => {
  const all = days(130, 5);
  const mean = (part: readonly Weather[]) =>
    part.reduce((sum, { temperature }) => sum + temperature, 0) / part.length;
  expect(mean(all.filter(({ sun }) => sun > 300))).toBeGreaterThan(mean(nightOf(all)) + 3);
  expect(mean(all.slice(-30 * 288))).toBeGreaterThan(mean(all.slice(0, 30 * 288)) + 4);
});

test('it rains on some days and not on others, as much as on a wet coast', () => {
  const all = days(120, 5);
  const total = all.reduce((sum, { rain }) => sum + rain, 0);
  expect(total).toBeGreaterThan(150);
  expect(total).toBeLessThan(900);
  const dry = Array.from({ length: 120 }, (_, day) => all.slice(day * 288, (day + 1) * 288));
  const without = dry.filter((day) => day.every(({ rain }) => rain === 0)).length;
  expect(without).toBeGreaterThan(20);
  expect(without).toBeLessThan(100);
});
