import { expect, test } from 'vitest';
import {
  ds18b20,
  ds18b20Conversion,
  HARMLESS,
  isImpossibleRate,
  isLinkWeak,
  isPowerOnValue,
  isSaturated,
  isSpike,
  isStuck,
  type ReadingToJudge,
  readingFlags,
  sensorKinds,
} from '../../../rules/cooler/index.ts';
import { HOUR, instant, MINUTE } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

test.for(truth('cooler/ds18b20.csv', ['raw', 'celsius']))(
  'raw $raw is $celsius °C',
  ({ raw, celsius }) => {
    expect(ds18b20(raw)).toBe(celsius);
  },
);

test('conversion takes 93.75 ms at 9 bits and 750 at 12, in steps of 0.5 to 0.0625 °C', () => {
  // Maxim DS18B20 data sheet.
  const bits = [9, 10, 11, 12].map((n) => ds18b20Conversion(n));
  expect(bits.map(({ milliseconds }) => milliseconds)).toEqual([93.75, 187.5, 375, 750]);
  expect(bits.map(({ step }) => step)).toEqual([0.5, 0.25, 0.125, 0.0625]);
  expect(() => ds18b20(65_536)).toThrow('Expected raw word from 0 to 65535');
  expect(() => ds18b20Conversion(8)).toThrow(RangeError);
  expect(() => ds18b20Conversion(13)).toThrow('Expected bits from 9 to 12, got 13');
  // Two's complement: the sign bit alone is -32,768 sixteenths, one less is the most above 0.
  expect(ds18b20(0x8000)).toBe(-2048);
  expect(ds18b20(0x7fff)).toBe(2047.9375);
  expect(ds18b20(null)).toBeNull();
});

test('85 °C is thrown away after a restart or more than 5 K from the last good value', () => {
  expect(isPowerOnValue(85, 3)).toBe(true);
  expect(isPowerOnValue(85, 79.95)).toBe(true);
  expect(isPowerOnValue(85, 80.05)).toBe(false);
  expect(isPowerOnValue(85, 84, true)).toBe(true);
  expect(isPowerOnValue(85, null)).toBe(true);
  expect(isPowerOnValue(84.9375, 3)).toBe(false);
});

const now = instant(1_700_000_000_000);
const reading: ReadingToJudge = {
  value: 3.4,
  kind: sensorKinds.ds18b20,
  lastGood: 3.3,
  firstSinceRestart: false,
  t: instant(now - 1000),
  before: instant(now - 61_000),
  now,
  builtAt: instant(now - 1e10),
};
const wet = { ...reading, kind: sensorKinds.sht31 };

test.for([
  ['a good one', reading, []],
  ['a missing one', { ...reading, value: null }, ['not-known']],
  ['the power-on value', { ...reading, value: 85 }, ['power-on-value', 'site-range']],
  [
    '85 °C by another kind',
    { ...reading, value: 85, kind: sensorKinds.dht22 },
    ['out-of-range', 'site-range'],
  ],
  ['no answer', { ...reading, value: -127 }, ['no-sensor', 'out-of-range', 'site-range']],
  [
    'a starved probe',
    { ...reading, value: 127.9375 },
    ['poor-supply', 'out-of-range', 'site-range'],
  ],
  ['-10.1 °C in the room', { ...reading, value: -10.1 }, ['site-range']],
  ['-9.9 °C in the room', { ...reading, value: -9.9 }, []],
  ['40.4 °C in the room', { ...reading, value: 40.4 }, ['site-range']],
  ['39.6 °C in the room', { ...reading, value: 39.6 }, []],
  ['-56 °C', { ...reading, value: -56 }, ['out-of-range', 'site-range']],
  [
    '303 °C, past what may be asked of power-on',
    { ...reading, value: 303 },
    ['out-of-range', 'site-range'],
  ],
  ['126 °C', { ...reading, value: 126 }, ['out-of-range', 'site-range']],
  ['101.9 %', { ...wet, value: 101.9 }, ['over-100']],
  ['102.1 %', { ...wet, value: 102.1 }, ['out-of-range']],
  ['-0.1 %', { ...wet, value: -0.1 }, ['out-of-range']],
  ['2.04 min ahead', { ...reading, t: instant(now + 2.03 * MINUTE) }, ['future']],
  ['1.97 min ahead', { ...reading, t: instant(now + 1.97 * MINUTE) }, []],
  ['before the last', { ...reading, before: instant(now) }, ['not-later']],
  ['before the build', { ...reading, builtAt: now, before: null }, ['before-build']],
] as const)('a reading carries its flags: %s', ([, given, flags]) => {
  expect(readingFlags(given)).toEqual(flags);
});

test('only a little over 100 % may still be used, and every sheet has its source', () => {
  expect(HARMLESS).toEqual(['over-100']);
  // Data sheets: Maxim DS18B20, Sensirion SHT3x-DIS, Aosong DHT22.
  const sheet = Object.values(sensorKinds).map(({ least, most, error }) => [
    least,
    most,
    error.typical,
    error.most,
  ]);
  expect(sheet).toEqual([
    [-55, 125, 0.5, null],
    [0, 100, 2, null],
    [0, 100, 3, null],
    [-40, 80, 0.5, null],
    [0, 100, 2, 5],
  ]);
  expect([sensorKinds.dht22.everySeconds, sensorKinds.dht22Humidity.everySeconds]).toEqual([2, 2]);
});

const at = (minute: number, value: number | null) => ({ t: instant(now + minute * MINUTE), value });
const same = (from: number, value: number) => [at(from, value), at(from / 2, value), at(-1, value)];
const cycling = { cycles: true, changed: false };
const outdoors = { cycles: false, changed: true };

test('the same raw value for an hour in a cycling room, or six while outside changed, is stuck', () => {
  expect(isStuck(same(-60, 3.0625), now, cycling)).toBe(true);
  expect(isStuck(same(-59, 3.0625), now, cycling)).toBeNull();
  expect(isStuck(same(-360, 3.0625), now, outdoors)).toBe(true);
  expect(isStuck(same(-354, 3.0625), now, outdoors)).toBeNull();
});

test('a value that moved, or had no cause to, is not stuck', () => {
  expect(isStuck([...same(-60, 3), at(0, 3.0625)], now, cycling)).toBe(false);
  expect(isStuck(same(-400, 3), now, { cycles: false, changed: false })).toBeNull();
  expect(isStuck([at(-61, 4), at(-30, 3), at(0, 3)], now, cycling)).toBe(false);
  expect(isStuck([], now, cycling)).toBeNull();
  // A value that changed before the window does not count.
  expect(isStuck([at(-90, 4), at(-61, 3), at(-30, 3), at(0, 3)], now, cycling)).toBe(true);
  expect(isStuck([at(-61, 4), at(-58.9, 3), at(-30, 3), at(0, 3)], now, cycling)).toBe(false);
  expect(isStuck([at(-363, 4), at(-361, 3), at(0, 3), at(-200, 3)], now, outdoors)).toBe(true);
});

test('3 K from five neighbours that agree is a spike', () => {
  const calm = [3, 3.1, 3.2, 3.3, 3.5];
  expect(isSpike(6.24, calm)).toBe(true);
  expect(isSpike(6.16, calm)).toBe(false);
  expect(isSpike(0.16, calm)).toBe(true);
  expect(isSpike(9, [3, 3.1, 3.2, 3.3, 3.505])).toBe(false); // they do not agree
  expect(isSpike(9, [3, 3.1, 3.2, 3.3, null])).toBeNull();
  expect(isSpike(null, calm)).toBeNull();
});

test.for([
  ['air', true, 3.05, true],
  ['air', true, 2.95, false],
  ['air', false, 7.9, false],
  ['air', false, 8.1, true],
  ['air', null, 7.9, false],
  ['produce', true, 1.01, true],
  ['produce', null, 0.99, false],
] as const)(
  '%s (door shut: %s) moving %s K in a minute is impossible: %s',
  ([of, doorShut, size, impossible]) => {
    expect(isImpossibleRate(at(0, 5), at(1, 5 + size), { of, doorShut })).toBe(impossible);
    expect(isImpossibleRate(at(0, 5), at(2, 5 - 2 * size), { of, doorShut })).toBe(impossible);
  },
);

test('no rate is judged of values not known, or of no time', () => {
  expect(isImpossibleRate(at(0, null), at(1, 5), { of: 'air' })).toBeNull();
  expect(isImpossibleRate(at(0, 4), at(0, 5), { of: 'air' })).toBeNull();
});

test('99 % for twelve hours may be a saturated probe', () => {
  const long = (value: number) => [at(-720, value), at(-300, value), at(0, value)];
  expect(isSaturated(long(99), now)).toBe(true);
  expect(isSaturated(long(98.9), now)).toBe(false);
  expect(isSaturated([at(-719, 100), at(0, 100)], now)).toBeNull();
  expect(isSaturated([at(-725, 90), at(-719, 100), at(0, 100)], now)).toBeNull();
  expect(
    isSaturated([at(-760, 100), at(-733, 90), at(-721, 100), at(-300, 100), at(0, 100)], now),
  ).toBe(true);
  expect(isSaturated([], now)).toBeNull();
});

test('three missed reports or a low supply ask for a look', () => {
  const every = { everyMinutes: 10 };
  expect(isLinkWeak(instant(now - 30.2 * MINUTE), now, every)).toBe(true);
  expect(isLinkWeak(instant(now - 29.8 * MINUTE), now, every)).toBe(false);
  expect(isLinkWeak(now, now, { ...every, supplyLow: true })).toBe(true);
  expect(isLinkWeak(null, now, every)).toBeNull();
  expect(HOUR).toBe(60 * MINUTE);
});
