import { expect, test } from 'vitest';
import {
  bedOffset,
  clearChance,
  earnsItsPlace,
  isClearCalm,
  isTrained,
  otherNights,
  trainingNights,
  unsureSky,
} from '../../../rules/frost/index.ts';
import { celsius, HOUR, instant, MINUTE } from '../../../rules/units.ts';

const sunset = instant(17 * HOUR);
const line = (minutes: readonly number[], values: readonly (number | null)[]) =>
  minutes.map((minute, index) => ({
    t: instant(sunset + minute * MINUTE),
    value: values[index] ?? null,
  }));
const half = [0, 30, 60, 90, 120];
const calm = {
  sunset,
  air: line(half, [8, 7.5, 7, 6.4, 6]),
  ground: line(half, [6, 5, 4, 3, 2]),
  rain: 0,
};

test('an evening that falls two kelvin, dry, with a colder ground, is clear and calm', () => {
  expect(isClearCalm(calm)).toBe(true);
  expect(isClearCalm({ ...calm, wind: 1.99 })).toBe(true);
});

test.for([
  ['falls less', { air: line(half, [8, 7.5, 7, 6.4, 6.01]) }],
  ['rises over half a kelvin', { air: line(half, [8, 6, 6.51, 6, 5]) }],
  ['has rain', { rain: 0.2 }],
  ['has a warmer ground', { ground: line(half, [8, 8, 7, 7, 7]) }],
  ['has wind', { wind: 2 }],
  ['rises, though much of it is missing', { air: line([0, 30], [5, 5.6]) }],
] as const)('an evening that %s is not', ([, change]) => {
  expect(isClearCalm({ ...calm, ...change })).toBe(false);
});

test('a rise of half a kelvin is still calm', () => {
  expect(isClearCalm({ ...calm, air: line(half, [8, 6, 6.5, 6, 5]) })).toBe(true);
});

test.for([
  ['no air', { air: [] }],
  ['no ground', { ground: [] }],
  ['no rain gauge', { rain: null }],
  ['air from 20.3 minutes after sunset', { air: line([20.3, 60, 100, 120], [8, 7, 6, 5]) }],
  ['air to 20.3 minutes before the end', { air: line([0, 50, 99.7], [8, 7, 5]) }],
  ['a gap of 61 minutes', { air: line([0, 61, 110, 120], [8, 7, 6, 5]) }],
  ['nulls', { air: line(half, [null, null, null, null, null]) }],
] as const)('with %s it can not be told', ([, change]) => {
  expect(isClearCalm({ ...calm, ...change })).toBeNull();
});

test('readings twenty minutes from the ends and an hour apart are enough', () => {
  expect(isClearCalm({ ...calm, air: line([20, 80, 100], [8, 7, 6]) })).toBe(true);
  // Outside the two hours nothing counts.
  expect(
    isClearCalm({ ...calm, air: [...line([-10], [0]), ...calm.air, ...line([125], [9])] }),
  ).toBe(true);
});

const night = (date: string, change = {}) => ({
  night: date,
  clearCalm: true as boolean | null,
  temperature: celsius(3),
  dewPoint: null,
  low: celsius(-1),
  ...change,
});
const october = (count: number, year = 2025) =>
  Array.from({ length: count }, (_, index) =>
    night(`${year}-10-${String(index + 1).padStart(2, '0')}`),
  );
const on = { on: '2025-11-01', hemisphere: 'north' } as const;

test('ten nights teach, nine do not', () => {
  expect(trainingNights(october(10), on)).toHaveLength(10);
  expect(trainingNights(october(9), on)).toBeNull();
  expect(isTrained({ n: 10 })).toBe(true);
  expect(isTrained({ n: 9 })).toBe(false);
});

test.for([
  ['was not clear', { clearCalm: false }],
  ['may not have been clear', { clearCalm: null }],
  ['has a filled low', { filled: true }],
  ['has no low', { low: null }],
  ['has no evening', { temperature: null }],
  ['was of the spring', { night: '2025-04-20' }],
  ['is yet to come', { night: '2025-11-02' }],
] as const)('a night that %s does not teach', ([, change]) => {
  expect(trainingNights([...october(9), night('2025-10-20', change)], on)).toBeNull();
});

test('the latest sixty teach', () => {
  const lows = [2022, 2023, 2024, 2025].flatMap((year) =>
    october(20, year).map((each) => ({ ...each, low: celsius(year - 2030) })),
  );
  const taught = trainingNights(lows.reverse(), on);
  expect(taught).toHaveLength(60);
  expect(taught?.[0]).toEqual({ temperature: 3, dewPoint: null, low: -7 });
  expect(taught?.at(-1)?.low).toBe(-5);
});

test('an unsure sky mixes both kinds of night: 0.55162', () => {
  // 0.7 x 0.7666 + 0.3 x 0.05, by hand.
  expect(unsureSky({ clear: 0.7, radiation: 0.7666, other: 0.05 })).toBeCloseTo(0.55162, 9);
  expect(unsureSky({ clear: null, radiation: 0.7, other: 0.05 })).toBeNull();
  expect(clearChance).toEqual({ clear: 0.9, broken: 0.5, overcast: 0.1 }); // common practice, no source
});

test('other nights count within fifteen days of the year either side, and never to certainty', () => {
  const other = (date: string, low: number | null, clearCalm: boolean | null = false) => ({
    night: date,
    clearCalm,
    low,
  });
  const nights = [
    other('2024-12-30', -1),
    other('2023-01-10', -2),
    other('2024-01-05', 1),
    other('2025-01-18', -9), // sixteen days away
    other('2024-12-18', -9), // fifteen
    other('2025-01-02', -9, true),
    other('2025-01-02', -9, null),
    other('2025-01-03', null),
    other('2025-01-04', 0),
  ];
  // Three of five below 0: 3.5 of 6, by hand.
  expect(otherNights(nights, 0, '2026-01-02')).toBeCloseTo(3.5 / 6, 12);
  expect(otherNights([], 0, '2026-01-02')).toBe(0.5);
});

test('a bed is colder than the screen by the median of clear nights', () => {
  const pairs = [
    { bed: -3, screen: 0, clearCalm: true },
    { bed: -1, screen: 0.5, clearCalm: true },
    { bed: -2, screen: 0, clearCalm: true },
    { bed: 5, screen: 0, clearCalm: false },
    { bed: null, screen: 0, clearCalm: true },
  ];
  expect(bedOffset(pairs)).toEqual({ offset: -2, nights: 3 });
  expect(bedOffset([])).toBeNull();
});

test('a forecast loses its place after thirty nights without skill', () => {
  expect(earnsItsPlace(-0.1, 29)).toBe(true);
  expect(earnsItsPlace(0, 30)).toBe(false);
  expect(earnsItsPlace(0.01, 30)).toBe(true);
  expect(earnsItsPlace(null, 90)).toBe(true);
});
