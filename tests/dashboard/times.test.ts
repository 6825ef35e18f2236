import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  addDays,
  calendarDay,
  instantAt,
  minuteOfDay,
  timeOfDay,
  when,
} from '../../dashboard/times.ts';

const zones = ['Europe/Dublin', 'Australia/Lord_Howe', 'America/New_York', 'Asia/Kathmandu', 'UTC'];
const minute = fc.integer({ min: 0, max: 1439 });
const day = fc.integer({ min: 0, max: 20_000 }).map((days) => addDays('1990-01-01', days));

test('a time of day is the one on the wall of the farm, not of the browser', () => {
  // Europe/Dublin keeps UTC in winter and UTC + 1 h in summer (IANA time zone database).
  expect(timeOfDay(Date.parse('2025-11-03T19:40:00Z'), 'Europe/Dublin')).toBe('19:40');
  expect(timeOfDay(Date.parse('2025-06-03T19:40:00Z'), 'Europe/Dublin')).toBe('20:40');
});

test('midnight is 00:00, never 24:00', () => {
  expect(timeOfDay(Date.parse('2025-11-03T00:00:00Z'), 'UTC')).toBe('00:00');
});

test('the instant of a wall-clock time shows that time, unless a change of clocks skips it', () => {
  fc.assert(
    fc.property(day, minute, fc.constantFrom(...zones), (name, wanted, zone) => {
      const ms = instantAt(name, wanted, zone);
      // A skipped time comes out later by what was skipped: at most an hour in these zones.
      const late = minuteOfDay(ms, zone) - wanted;
      return calendarDay(ms, zone) === name
        ? late === 0 || (late > 0 && late <= 60)
        : wanted >= 1380;
    }),
  );
});

test('a time skipped in spring becomes the one an hour later', () => {
  // Clocks in Ireland went from 01:00 to 02:00 on 30 March 2025 (IANA time zone database).
  const ms = instantAt('2025-03-30', 90, 'Europe/Dublin');
  expect(new Date(ms).toISOString()).toBe('2025-03-30T01:30:00.000Z');
  expect(timeOfDay(ms, 'Europe/Dublin')).toBe('02:30');
});

test('a half-hour change of clocks is followed too', () => {
  // Lord Howe Island went from UTC+10:30 to UTC+11 on 5 October 2025 (IANA time zone database).
  expect(new Date(instantAt('2025-10-05', 720, 'Australia/Lord_Howe')).toISOString()).toBe(
    '2025-10-05T01:00:00.000Z',
  );
  expect(new Date(instantAt('2025-10-04', 720, 'Australia/Lord_Howe')).toISOString()).toBe(
    '2025-10-04T01:30:00.000Z',
  );
});

test('the day after the last of February is right in a leap year and in another', () => {
  expect(addDays('2024-02-28', 1)).toBe('2024-02-29');
  expect(addDays('2025-02-28', 1)).toBe('2025-03-01');
});

test('a deadline today is a time, another day is named', () => {
  const now = Date.parse('2025-11-03T12:00:00Z');
  expect(when(Date.parse('2025-11-03T19:40:00Z'), 'Europe/Dublin', now)).toBe('19:40');
  expect(when(Date.parse('2025-11-04T06:30:00Z'), 'Europe/Dublin', now)).toBe('Tue 4 Nov 06:30');
});
