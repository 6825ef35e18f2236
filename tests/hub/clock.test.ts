import fc from 'fast-check';
import { expect, onTestFinished, test, vi } from 'vitest';
import { calendarOf, fastClock, steppedClock, wallClock } from '../../hub/clock.ts';

const HOUR = 3_600_000;

// Source: IANA time zone database (tzdata), rules in force from 2012 to 2026; each zone below
// changes its clocks differently. Since 2012 no zone here changes on a minute that is no quarter.
const zones = [
  'Europe/Dublin',
  'America/New_York',
  'Australia/Lord_Howe', // half an hour of daylight saving
  'Asia/Kathmandu', // UTC+05:45
  'America/Sao_Paulo', // until 2019 clocks changed at midnight
  'Asia/Beirut', // changes at midnight
  'America/Havana', // changes at midnight and at 01:00
  'Pacific/Apia', // UTC+13 since 2011-12-31
  'Pacific/Kiritimati', // UTC+14
  'Pacific/Niue', // UTC-11
  'UTC',
];
const from2012 = Date.UTC(2012, 0, 1);
const to2030 = Date.UTC(2030, 0, 1);

test.for(zones)('in %s every instant lies within the bounds of its own day', (zone) => {
  const calendar = calendarOf(zone);
  fc.assert(
    fc.property(fc.integer({ min: from2012, max: to2030 }), (t) => {
      const { begins, ends } = calendar.bounds(calendar.dayOf(t));
      expect(t).toBeGreaterThanOrEqual(begins);
      expect(t).toBeLessThan(ends);
    }),
    { numRuns: 300 },
  );
});

test.for(zones)('in %s each day ends where the next begins, all year round', (zone) => {
  const calendar = calendarOf(zone);
  for (let day = '2018-01-01'; day < '2019-03-01'; day = calendar.add(day, 1)) {
    const { begins, ends } = calendar.bounds(day);
    expect(calendar.dayOf(begins)).toBe(day);
    expect(calendar.dayOf(begins - 1)).toBe(calendar.add(day, -1));
    expect(calendar.bounds(calendar.add(day, 1)).begins).toBe(ends);
  }
});

// Source: tzdata; the days on which the clocks changed, and what a wall clock showed.
test.for([
  ['Europe/Dublin', '2026-03-29', 23],
  ['Europe/Dublin', '2026-10-25', 25],
  ['Europe/Dublin', '2026-06-01', 24],
  ['America/New_York', '2026-03-08', 23],
  ['America/New_York', '2026-11-01', 25],
  ['Australia/Lord_Howe', '2026-04-05', 24.5],
  ['Australia/Lord_Howe', '2026-10-04', 23.5],
  ['Asia/Kathmandu', '2026-07-01', 24],
  ['America/Sao_Paulo', '2018-11-04', 23],
  ['America/Sao_Paulo', '2018-02-17', 25],
  ['Asia/Beirut', '2022-03-27', 23],
  ['Asia/Beirut', '2022-10-29', 25],
  ['America/Havana', '2026-03-08', 23],
  ['America/Havana', '2026-11-01', 25],
] as const)('in %s the day %s has %d hours', ([zone, day, hours]) => {
  const { begins, ends } = calendarOf(zone).bounds(day);
  expect((ends - begins) / HOUR).toBe(hours);
});

// Source: worked by hand from the offsets of tzdata.
test.for([
  ['Europe/Dublin', '2026-06-01', '2026-05-31T23:00:00Z'],
  ['Europe/Dublin', '2026-12-01', '2026-12-01T00:00:00Z'],
  ['Asia/Kathmandu', '2026-06-01', '2026-05-31T18:15:00Z'],
  ['Australia/Lord_Howe', '2026-01-15', '2026-01-14T13:00:00Z'],
  ['Australia/Lord_Howe', '2026-07-15', '2026-07-14T13:30:00Z'],
  ['America/Havana', '2026-03-08', '2026-03-08T05:00:00Z'],
  ['America/Sao_Paulo', '2018-11-04', '2018-11-04T03:00:00Z'],
  ['Pacific/Kiritimati', '2026-01-01', '2025-12-31T10:00:00Z'],
] as const)('in %s the day %s begins at %s', ([zone, day, begins]) => {
  expect(new Date(calendarOf(zone).bounds(day).begins).toISOString()).toBe(
    begins.replace('Z', '.000Z'),
  );
});

test('the minutes to local time follow the season', () => {
  const dublin = calendarOf('Europe/Dublin');
  expect(dublin.offsetMinutes(Date.UTC(2026, 0, 15))).toBe(0);
  expect(dublin.offsetMinutes(Date.UTC(2026, 6, 15))).toBe(60);
  expect(dublin.offsetMinutes(Date.UTC(2026, 2, 29, 0, 59, 59))).toBe(0);
  expect(dublin.offsetMinutes(Date.UTC(2026, 2, 29, 1))).toBe(60);
  expect(calendarOf('Asia/Kathmandu').offsetMinutes(0 + from2012)).toBe(345);
});

test('adding days is undone by taking them away, and steps over leap days', () => {
  const { add } = calendarOf('Europe/Dublin');
  expect(add('2028-02-28', 1)).toBe('2028-02-29');
  expect(add('2026-12-31', 1)).toBe('2027-01-01');
  expect(add('2026-03-28', 2)).toBe('2026-03-30');
  fc.assert(
    fc.property(fc.integer({ min: -4000, max: 4000 }), (count) => {
      expect(add(add('2026-05-17', count), -count)).toBe('2026-05-17');
    }),
  );
});

test('a zone nobody knows is refused', () => {
  expect(() => calendarOf('Europe/Nowhere')).toThrow(RangeError);
});

test('a stepped clock stands still until it is set', () => {
  const clock = steppedClock(1000);
  expect(clock.now()).toBe(1000);
  clock.set(2500);
  expect(clock.now()).toBe(2500);
});

test('a fast clock stood at its start when the wall clock stood at its mark', () => {
  const real = Date.now() - 1000;
  const clock = fastClock(Date.UTC(2026, 4, 1), real, 60);
  expect(clock.now() - Date.UTC(2026, 4, 1)).toBeGreaterThanOrEqual(60_000);
  expect(clock.now() - Date.UTC(2026, 4, 1)).toBeLessThan(600_000);
});

test('a machine that woke up in 1970 has no clock that is set', () => {
  vi.useFakeTimers({ now: 60_000 });
  onTestFinished(() => void vi.useRealTimers());
  expect(wallClock.isSet()).toBe(false);
  vi.setSystemTime(Date.UTC(2026, 0, 1));
  expect(wallClock.isSet()).toBe(true);
});
