import fc from 'fast-check';
import { expect, test } from 'vitest';
import { screens } from '../../hub/words/index.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

test.for([
  [0, 'just now'],
  [59_999, 'just now'],
  [MINUTE, '1 minute ago'],
  [4.9 * MINUTE, '4 minutes ago'],
  [59 * MINUTE, '59 minutes ago'],
  [HOUR, '1 hour ago'],
  [47.9 * HOUR, '47 hours ago'],
  [48 * HOUR, '2 days ago'],
  [-5 * MINUTE, 'just now'],
] as const)('%d ms is %s', ([ms, said]) => {
  expect(screens.age(ms)).toBe(said);
});

test.for([
  [0, 'now'],
  [25 * MINUTE, 'in 25 min'],
  [2 * HOUR + 10 * MINUTE, 'in 2 h 10'],
  [3 * HOUR, 'in 3 h'],
  [2 * HOUR + 5 * MINUTE, 'in 2 h 05'],
  [-25 * MINUTE, '25 min late'],
  [52 * HOUR, 'in 2 days 4 h'],
] as const)('a deadline %d ms away is %s', ([ms, said]) => {
  expect(plain(screens.countdown(ms))).toBe(said);
});

test('a minute short of an hour never reads as 60 minutes', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 40 * 24 * HOUR }),
      (ms) => !/\b60\b/.test(screens.span(ms)),
    ),
  );
});

test('below zero has a real minus, and a small negative never reads as minus zero', () => {
  expect(screens.number(-1.25)).toBe('−1.3');
  expect(screens.number(-0.04)).toBe('0.0');
});

test('an unknown number is said, never shown as zero or with a unit', () => {
  expect(screens.temperature(null)).toBe('not known');
  expect(screens.humidity(null)).toBe('not known');
  expect(screens.number(Number.NaN)).toBe('not known');
});

test('a forecast is never certain', () => {
  expect(plain(screens.chance(0))).toBe('under 1 %');
  expect(plain(screens.chance(1))).toBe('over 99 %');
  expect(plain(screens.chance(0.62))).toBe('62 %');
});

test('tonight’s low says its range, its chance and how far it can be trusted', () => {
  const low = { mean: -1.2, between: [-3.1, 0.8] as const, at: -1.1, p: 0.62, by: '03:40' };
  expect(plain(screens.tonightLow({ ...low, nights: 46 }))).toBe(
    'low −1.2 °C, 8 nights in 10 between −3.1 and 0.8; 62 % chance below −1.1 by 03:40; learned from 46 nights',
  );
  expect(screens.tonightLow({ ...low, nights: 9 })).toContain('a wide guess until ten nights');
});

test('a lost link says since when, and how old the page is', () => {
  expect(screens.link.lost('14:05', 3 * MINUTE)).toBe(
    'No link to the hub since 14:05. What you see is 3 minutes old.',
  );
});
