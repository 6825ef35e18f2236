import { expect } from 'vitest';
import {
  type AirRead,
  signsByHumidity,
  type Window,
  wetHoursBounds,
  wetPieces,
} from '../../../rules/wetness/index.ts';
import { at, reading } from './series.ts';

// A place judged by its humidity alone, and its hours of wetness as bounds.

export const rule = { at: 90, below: 87 };
export const hourly90 = { maxGapMinutes: 90 };
export const window = (from: number, to: number): Window => ({ from: at(from), to: at(to) });
export const piecesOf = (readings: readonly AirRead[], inside: Window, settings = {}) =>
  wetPieces(signsByHumidity(readings, rule), inside, settings);

/** A reading every 10 minutes, with the humidity of its hour; null leaves the hour silent. */
export const tenMinutes = (humidities: readonly (number | null)[], temperature = 15) =>
  humidities.flatMap((humidity, hour) =>
    humidity === null
      ? []
      : [0, 1, 2, 3, 4, 5].map((sixth) => reading(hour + sixth / 6, temperature, humidity)),
  );
export const wet = (readings: readonly AirRead[], hours: number) =>
  wetHoursBounds(piecesOf(readings, window(0, hours)));
export const closeTo = ([least, most]: readonly [number, number], a: number, b: number) => {
  expect(least).toBeCloseTo(a, 9);
  expect(most).toBeCloseTo(b, 9);
};
