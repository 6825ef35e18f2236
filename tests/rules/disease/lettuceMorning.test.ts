import { expect, test } from 'vitest';
import { infectiousMorning, lettuceMorning } from '../../../rules/disease/index.ts';
import { at } from '../wetness/series.ts';
import { circumstances, piece } from './circumstances.ts';

// Sunrise is hour 18 (06:00).
const morning = (until: number, temperature: number, later = temperature) => [
  piece('dry', 10, 16, 12),
  ...(until > 16 ? [piece('wet', 16, Math.min(until, 21), temperature)] : []),
  ...(until > 21 ? [piece('wet', 21, until, later)] : []),
  piece('dry', until, 26, later),
];

test('lettuce: leaves wet from 06:00 until 10:00 infect, unless it was too warm', () => {
  // Scherm & van Bruggen 1994 (4 h); Wu et al. 2002 (20 °C in 3 h, 22 °C in the next 4).
  expect(infectiousMorning(morning(22, 14), at(18))).toBe('yes');
  expect(infectiousMorning(morning(21.9, 14), at(18))).toBe('no');
  expect(infectiousMorning(morning(22, 21), at(18))).toBe('no');
  expect(infectiousMorning(morning(22, 20), at(18))).toBe('yes');
  expect(infectiousMorning(morning(22, 20.1), at(18))).toBe('no');
  expect(infectiousMorning(morning(22, 14, 22), at(18))).toBe('yes');
  expect(infectiousMorning(morning(22, 14, 22.1), at(18))).toBe('no');
});

test('lettuce: the means are over the 3 h after sunrise, and the 4 h after those', () => {
  const warmFrom = (hour: number) => [
    piece('wet', 18, 20.9, 14),
    piece('wet', 20.9, hour, 14),
    piece('wet', hour, 26, 40),
  ];
  // Of the 4 h from 21:00, 40 °C in 1.23 h makes the mean 22.0 °C: 14 + 26 * 1.23 / 4.
  expect(infectiousMorning(warmFrom(25 - 1.24), at(18))).toBe('no');
  expect(infectiousMorning(warmFrom(25 - 1.22), at(18))).toBe('yes');
  // Of the 3 h from sunrise, 40 °C in 0.6923 h makes it 20 °C.
  const early = (length: number) => [
    piece('wet', 18, 18 + length, 40),
    piece('wet', 18 + length, 26, 14),
  ];
  expect(infectiousMorning(early(0.7), at(18))).toBe('no');
  expect(infectiousMorning(early(0.68), at(18))).toBe('yes');
});

test('lettuce: wetness that begins later in the morning does not count, and gaps stay open', () => {
  const late = [piece('dry', 10, 20, 14), piece('wet', 20, 24, 14), piece('dry', 24, 26, 14)];
  expect(infectiousMorning(late, at(18))).toBe('no');
  const hole = [
    piece('wet', 16, 19, 14),
    piece('unknown', 19, 19.6, 12, 16),
    piece('wet', 19.6, 26, 14),
  ];
  expect(infectiousMorning(hole, at(18))).toBe('unknown');
  expect(infectiousMorning([], at(18))).toBe('unknown');
  // Wet for sure, but too little known of the temperature: three quarters of each mean.
  const blind = (known: number) => [
    piece('wet', 18, 18 + known, 14),
    piece('wet', 18 + known, 21, 10, 30),
    piece('wet', 21, 26, 14),
  ];
  expect(infectiousMorning(blind(2.25), at(18))).toBe('yes');
  expect(infectiousMorning(blind(2.24), at(18))).toBe('unknown');
  const cut = morning(22, 14).filter(({ to }) => to <= at(22));
  expect(infectiousMorning([...cut, piece('dry', 22, 24, 14)], at(18))).toBe('yes');
  expect(infectiousMorning([...cut, piece('dry', 22, 23.9, 14)], at(18))).toBe('unknown');
});

test('lettuce: the day’s class follows, and needs to know the sunrise', () => {
  const known = (until: number) => circumstances([], { wetness: morning(until, 14) });
  expect(lettuceMorning.judge(known(22))).toMatchObject({
    verdict: 'yes',
    risk: { least: 'event' },
  });
  expect(lettuceMorning.judge(known(20))).toMatchObject({ verdict: 'no', risk: { most: 'quiet' } });
  expect(lettuceMorning.judge(known(22)).because[0]?.limit).toBe(4);
  const blind = lettuceMorning.judge({ ...known(22), sunrise: null });
  expect(blind).toMatchObject({ verdict: 'unknown', missing: ['sun-times'] });
});
