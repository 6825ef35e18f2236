import fc from 'fast-check';
import { expect, test } from 'vitest';
import { alarmCounts, nextTry, type SeenAlarm, within } from '../../../hub/alarms/index.ts';

const MINUTE = 60_000;
const DAY = 86_400_000;
const T = Date.UTC(2026, 4, 10);
const alarm = (i: number, more: Partial<SeenAlarm> = {}): SeenAlarm => ({
  ...{ id: `a${i}`, place: 'x', kind: 'door', since: T + i * DAY, words: '', clearedAt: T },
  ...{ seenBy: null, seenAt: null, was: null },
  ...more,
});
const monthOf = (t: number) => new Date(t).toISOString().slice(0, 7);

test('alarms are counted by month and kind, with the time to seen and the false share', () => {
  const all = [
    alarm(0, { seenAt: T + 5 * MINUTE, was: 'false' }),
    alarm(1, { seenAt: T + DAY + 15 * MINUTE, was: 'right' }),
    alarm(2, { was: 'right' }),
    alarm(3, { was: 'right' }),
    alarm(4),
    alarm(25, { kind: 'power' }),
  ];
  const [june, may] = alarmCounts(all, monthOf);
  expect(june).toMatchObject({ month: '2026-06', kind: 'power', raised: 1, falseShare: null });
  expect(june?.minutesToSeen).toBeNull();
  expect(may).toMatchObject({ month: '2026-05', raised: 5, seen: 2, minutesToSeen: 10 });
  // Source: Wilson 1927, by hand for 1 of 4 with z = 1.959964:
  // (0.25 + z²/8 ± z √(0.1875/4 + z²/64)) / (1 + z²/4) = 0.0456 and 0.6994.
  expect(may?.falseShare?.share).toBe(0.25);
  expect(may?.falseShare?.low).toBeCloseTo(0.0456, 3);
  expect(may?.falseShare?.high).toBeCloseTo(0.6994, 3);
});

test('tries come further and further apart, and end after a day', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 60 }), (tries) => {
      const wait = (nextTry(tries, T, T) ?? 0) - T;
      const next = (nextTry(tries + 1, T, T) ?? 0) - T;
      expect(wait).toBeGreaterThanOrEqual(30_000);
      expect(next).toBeGreaterThanOrEqual(wait);
      expect(next).toBeLessThanOrEqual(30 * MINUTE);
    }),
  );
  expect(nextTry(40, T, T + DAY)).toBeNull();
});

test('hours that run over midnight hold the night and not the day', () => {
  const night = { from: 22 * 60, to: 6 * 60 };
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1439 }), (minute) => {
      expect(within(minute, night)).toBe(minute >= 22 * 60 || minute < 6 * 60);
      expect(within(minute, { from: 0, to: 0 })).toBe(true);
      expect(within(minute, null)).toBe(false);
    }),
  );
});
