import { expect, test } from 'vitest';
import {
  acceptedBase,
  baseTemperature,
  dailyLightIntegral,
  dayAt,
  dayHeat,
  dayLength,
  daysInMonth,
  degreeDays,
  degreeDaysAverage,
  degreeDaysSine,
  hoursBelow,
  scanBase,
  sunTimes,
} from '../../../rules/heat/index.ts';
import { HOUR, instant } from '../../../rules/units.ts';

const sine = { min: 5, max: 15, lower: 8 };
const average = { method: 'limits-first', ...sine } as const;
const sowing = { temperature: 15, days: 20 };
const day = { from: instant(0), to: instant(24 * HOUR), rise: null, lower: 10, readings: [] };
const bad = Number.NaN;

test.for<[string, () => unknown]>([
  ['minimum from -100 to 200 °C, got -101', () => degreeDaysSine({ ...sine, min: -101 })],
  ['maximum from 5 to 200 °C, got 201', () => degreeDaysSine({ ...sine, max: 201 })],
  ['lower threshold from -100 to 200 °C, got 201', () => degreeDaysSine({ ...sine, lower: 201 })],
  ['upper threshold from 8 to 250 °C, got 251', () => degreeDaysSine({ ...sine, upper: 251 })],
  [
    'minimum of the next day from -100 to 15 °C, got 16',
    () => degreeDaysSine({ ...sine, nextMin: 16 }),
  ],
  ['minimum from -100 to 200 °C, got -101', () => degreeDaysAverage({ ...average, min: -101 })],
  ['maximum from 5 to 200 °C, got 201', () => degreeDaysAverage({ ...average, max: 201 })],
  [
    'lower threshold from -100 to 200 °C, got -101',
    () => degreeDaysAverage({ ...average, lower: -101 }),
  ],
  ['upper threshold from 8 to 250 °C, got 7', () => degreeDaysAverage({ ...average, upper: 7 })],
  ['lower threshold from -100 to 200 °C, got 201', () => degreeDays([], { lower: 201 })],
  ['upper threshold from 10 to Infinity °C, got 9', () => degreeDays([], { lower: 10, upper: 9 })],
  [
    'longest time between readings from 0 to 1440 min, got 1441',
    () => degreeDays([], { lower: 1, maxGapMinutes: 1441 }),
  ],
  ['threshold from -100 to 200 °C, got 201', () => hoursBelow([], 201)],
  [
    'longest time between readings from 0 to 1440 min, got -1',
    () => hoursBelow([], 2, { maxGapMinutes: -1 }),
  ],
  [
    'temperature from -273.15 to 1000 °C, got 1000',
    () => degreeDays([{ t: instant(0), value: 1000 }], { lower: 1 }),
  ],
  [
    'temperature from -273.15 to 1000 °C, got -273.15',
    () => degreeDays([{ t: instant(0), value: -273.15 }], { lower: 1 }),
  ],
  ['latitude from -90 to 90 °, got 90.5', () => dayLength(90.5, 1)],
  ['day of the year from 1 to 366, got 367', () => dayLength(45, 367)],
  ['depth below the horizon from -18 to 18 °, got 19', () => dayLength(45, 1, 19)],
  ['latitude from -90 to 90 °, got -91', () => sunTimes(instant(0), -91, 0)],
  ['longitude from -180 to 180 °, got -181', () => sunTimes(instant(0), 0, -181)],
  [
    'time from -8640000000000000 to 8640000000000000 ms, got NaN',
    () => sunTimes(instant(bad), 0, 0),
  ],
  ['global radiation from 0 to 45 MJ m⁻² d⁻¹, got 46', () => dailyLightIntegral(46)],
  ['number of sowings from 3 to Infinity, got 2', () => baseTemperature([sowing, sowing])],
  [
    'temperature of a sowing from -10 to 50 °C, got 51',
    () => baseTemperature([sowing, sowing, { ...sowing, temperature: 51 }]),
  ],
  [
    'days of a sowing from 0.1 to 1000, got 1001',
    () => baseTemperature([sowing, sowing, { ...sowing, days: 1001 }]),
  ],
  ['starting base temperature from -10 to 30 °C, got 31', () => acceptedBase([], 31)],
  ['lowest base temperature from -10 to 30 °C, got -11', () => scanBase([], { from: -11, to: 3 })],
  ['highest base temperature from 2 to 30 °C, got 31', () => scanBase([], { from: 2, to: 31 })],
  ['month from 1 to 12, got 13', () => daysInMonth(2025, 13)],
  ['day number from -719162 to 2932896, got 2932897', () => dayAt(2_932_897)],
  ['end of the day from 3600000 to 90000000 ms, got 0', () => dayHeat({ ...day, to: instant(0) })],
  [
    'spread of a guessed day from 0 to 50 °C d, got 51',
    () => dayHeat({ ...day, extremes: { min: 1, max: 2, sd: 51 } }),
  ],
  [
    'spread of a guessed day from 0 to 50 °C d, got 51',
    () => dayHeat({ ...day, normal: { degreeDays: 1, sd: 51 } }),
  ],
  [
    'normal units of the day from 0 to 60 °C d, got 61',
    () => dayHeat({ ...day, normal: { degreeDays: 61, sd: 1 } }),
  ],
])('Expected %s', ([sentence, call]) => {
  expect(call).toThrow(new RangeError(`Expected ${sentence}`));
});

test('unknown in, unknown out', () => {
  expect(degreeDaysSine({ ...sine, min: null })).toBeNull();
  expect(degreeDaysSine({ ...sine, upper: null })).toBeNull();
  expect(dayLength(null, 12)).toBeNull();
  expect(sunTimes(null, 45, 0)).toBeNull();
  expect(dailyLightIntegral(null)).toBeNull();
});
