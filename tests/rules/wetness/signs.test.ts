import { expect, test } from 'vitest';
import { celsius, kelvin, percent } from '../../../rules/units.ts';
import {
  type AirRead,
  accuracyPieces,
  dampProbe,
  dryByMidMorning,
  leafWetRule,
  possiblyCreeping,
  signsByDepression,
  signsByHumidity,
  signsByLeafProbe,
  sunStruck,
  trayWetRule,
  wetHoursBounds,
} from '../../../rules/wetness/index.ts';
import { at, reading } from './series.ts';

const words = (readings: readonly { readonly sign: string | null }[]) =>
  readings.map(({ sign }) => sign);
const air = (temperature: number | null, humidity: number | null): AirRead => ({
  t: at(0),
  temperature: temperature === null ? null : celsius(temperature),
  humidity: humidity === null ? null : percent(humidity),
});

test('by humidity: wet from 90, dry under 87, trays 85 and 82', () => {
  // 90 as Alvares et al. 2014 count; the others are ours.
  const read = [89.9, 90, 87, 86.9, 104, 106, 0].map((rh) => air(15, rh));
  expect(words(signsByHumidity(read, leafWetRule))).toEqual([
    'between',
    'wet',
    'between',
    'dry',
    'wet',
    null,
    null,
  ]);
  const trays = [84.9, 85, 82, 81.9].map((rh) => air(15, rh));
  expect(words(signsByHumidity(trays, trayWetRule))).toEqual(['between', 'wet', 'between', 'dry']);
  expect(words(signsByHumidity([air(null, 95), air(15, null)], leafWetRule))).toEqual([
    'wet',
    null,
  ]);
});

test('by dew-point depression: wet under 2 K, dry over 2.4 K', () => {
  // Humidity at 10 °C for 2 K is 87.3617 % and for 2.4 K 85.0100 %, computed apart from this code.
  const read = [87.37, 87.35, 85.02, 85].map((rh) => air(10, rh));
  expect(words(signsByDepression(read))).toEqual(['wet', 'between', 'between', 'dry']);
  const silent = [air(null, 95), air(10, null), air(61, 95)];
  expect(words(signsByDepression(silent))).toEqual([null, null, null]);
  expect(() => signsByDepression([], { wetUnder: kelvin(3), dryOver: kelvin(2) })).toThrow(
    'Expected depression above which leaves are dry from 3 to 20 K, got 2',
  );
  expect(() => signsByDepression([], { wetUnder: kelvin(20), dryOver: kelvin(20) })).not.toThrow();
  expect(() => signsByDepression([], { wetUnder: kelvin(20.1), dryOver: kelvin(21) })).toThrow(
    'Expected depression below which leaves are wet from 0 to 20 K',
  );
});

test('by a leaf-wetness probe: wet from half its signal, dry under 40 %', () => {
  // Common practice, no source; the release is ours.
  const leaf = (wetness: number | null) => ({
    t: at(0),
    temperature: null,
    wetness: wetness === null ? null : percent(wetness),
  });
  const read = [50, 49.9, 40, 39.9, 0, 100, 101, -1, Number.NaN, null].map(leaf);
  expect(words(signsByLeafProbe(read))).toEqual([
    'wet',
    'between',
    'between',
    'dry',
    'dry',
    'wet',
    null,
    null,
    null,
    null,
  ]);
  expect(words(signsByLeafProbe([leaf(30)], { at: 30, below: 20 }))).toEqual(['wet']);
  expect(() => signsByLeafProbe([], { at: 30, below: 31 })).toThrow('from 0 to 30 %, got 31');
  expect(() => signsByLeafProbe([], { at: 101, below: 50 })).toThrow(RangeError);
  expect(() => signsByLeafProbe([], { at: 0.9, below: 0 })).toThrow(RangeError);
  expect(() => signsByLeafProbe([], { at: 100, below: 50 })).not.toThrow();
  expect(() => signsByLeafProbe([], { at: 1, below: 0 })).not.toThrow();
});

test('a probe of ± 2 % leaves the edge of the night open', () => {
  // Rises 3 % an hour from 82: read 90 after 8/3 h; with +2 after 2 h, with -2 after 10/3 h.
  const readings = Array.from({ length: 601 }, (_, n) =>
    reading(n / 100, 15, Math.min(96, 82 + (3 * n) / 100)),
  );
  const [least, most] = wetHoursBounds(
    accuracyPieces(readings, leafWetRule, 2, { from: at(0), to: at(6) }),
  );
  expect(least).toBeCloseTo(6 - 10 / 3, 1);
  expect(most).toBeCloseTo(4, 1);
  const exact = accuracyPieces(readings, leafWetRule, 0, { from: at(0), to: at(6) });
  expect(wetHoursBounds(exact)[0]).toBe(wetHoursBounds(exact)[1]);
  for (const error of [-0.1, 10.1])
    expect(() => accuracyPieces([], leafWetRule, error, { from: at(0), to: at(1) })).toThrow(
      RangeError,
    );
  expect(() => accuracyPieces([], leafWetRule, 10, { from: at(0), to: at(1) })).not.toThrow();
});

test('the error of a probe makes no dead reading speak, and keeps to what humidity can be', () => {
  const window = { from: at(0), to: at(1) };
  const series = (humidity: number) =>
    [0, 0.25, 0.5, 0.75].map((hour) => reading(hour, 15, humidity));
  expect(wetHoursBounds(accuracyPieces(series(0), leafWetRule, 5, window))).toEqual([0, 1]);
  expect(wetHoursBounds(accuracyPieces(series(106), leafWetRule, 8, window))).toEqual([0, 1]);
  expect(wetHoursBounds(accuracyPieces(series(104), leafWetRule, 5, window))).toEqual([1, 1]);
  expect(wetHoursBounds(accuracyPieces(series(1), leafWetRule, 5, window))).toEqual([0, 0]);
  const rule = { ...leafWetRule, maxGapMinutes: 10 };
  expect(wetHoursBounds(accuracyPieces(series(95).slice(0, 1), rule, 2, window))).toEqual([0, 1]);
});

test('possibly creeping: 98 % and more for over 48 h without a dip under 90', () => {
  const days = (length: number, humidity: number, dip?: number) =>
    Array.from({ length: length + 1 }, (_, hour) =>
      reading(hour, 15, hour === 20 && dip ? dip : humidity),
    );
  expect(possiblyCreeping(days(48, 98))).toBeNull();
  expect(possiblyCreeping([...days(48, 98), reading(48.1, 15, 98)])).toBe(at(0));
  expect(possiblyCreeping(days(60, 97.9))).toBeNull();
  expect(possiblyCreeping(days(60, 98, 90))).toBe(at(0));
  expect(possiblyCreeping(days(60, 98, 89.9))).toBeNull();
  expect(possiblyCreeping([])).toBeNull();
});

test('a damp probe: 99.5 % and more for over 12 h', () => {
  const hours = (length: number, humidity: number) =>
    Array.from({ length: length + 1 }, (_, hour) => reading(hour, 15, humidity));
  expect(dampProbe(hours(12, 99.5))).toBeNull();
  expect(dampProbe([...hours(12, 99.5), reading(12.1, 15, 99.5)])).toBe(at(0));
  expect(dampProbe(hours(20, 99.4))).toBeNull();
  const silent = hours(20, 99.5).map((each, hour) =>
    hour === 5 ? { ...each, humidity: null } : each,
  );
  expect(dampProbe(silent)).toBe(at(0));
});

test('two probes more than 4 K apart at midday: the warmer may be in the sun', () => {
  const midday = { from: at(10), to: at(16) };
  const one = (hour: number, temperature: number) => [reading(hour, temperature, 60)];
  expect(sunStruck(one(12, 30), one(12, 25.99), midday)).toBe('first');
  expect(sunStruck(one(12, 25.9), one(12, 30), midday)).toBe('second');
  expect(sunStruck(one(12, 30), one(12, 26), midday)).toBeNull();
  expect(sunStruck(one(10, 30), one(10, 25), midday)).toBe('first');
  expect(sunStruck(one(9.9, 30), one(9.9, 25), midday)).toBeNull();
  expect(sunStruck(one(16.1, 30), one(16.1, 25), midday)).toBeNull();
  expect(sunStruck(one(12, 30), one(12 + 1 / 6, 25), midday)).toBe('first');
  expect(sunStruck(one(12, 30), one(12.17, 25), midday)).toBeNull();
  expect(
    sunStruck(one(12, 30), [{ ...reading(12, 25, 60), temperature: null }], midday),
  ).toBeNull();
});

test('dry by mid-morning is seen three hours after sunrise, and not before', () => {
  // At 10 °C 85.02 % is 2.4 K of depression and dry, 87.37 % is under 2 K and wet.
  const until = (hours: number, after: number) =>
    Array.from({ length: 60 }, (_, n) => reading(n / 6, 10, n / 6 < hours ? 95 : after));
  const asked = (readings: readonly AirRead[], now: number) =>
    dryByMidMorning(readings, at(5), at(now));
  expect(asked(until(7, 80), 7.99)).toBeNull();
  expect(asked(until(7, 80), 8)).toBe(true);
  expect(asked(until(8, 80), 8)).toBe(true);
  expect(asked(until(8.1, 80), 8)).toBe(false);
  expect(asked(until(7, 86), 8)).toBe(false);
  expect(
    asked(
      until(7, 80).filter(({ t }) => t < at(6)),
      8,
    ),
  ).toBeNull();
  expect(asked([], 8)).toBeNull();
  expect(
    dryByMidMorning(
      [0, 1, 2, 3].map((h) => reading(h + 5, 10, 80)),
      at(5),
      at(8),
      { maxGapMinutes: 60 },
    ),
  ).toBe(true);
});

test('without a step told, 30 minutes between readings are seen and no more', () => {
  const wetUntil = (last: number) => [
    ...Array.from({ length: 12 }, (_, n) => reading(5 + n / 4, 10, 95)), // until 07:45
    reading(last, 10, 60),
  ];
  expect(dryByMidMorning(wetUntil(8.25), at(5), at(9))).toBe(false);
  expect(dryByMidMorning(wetUntil(8.255), at(5), at(9))).toBeNull();
});
