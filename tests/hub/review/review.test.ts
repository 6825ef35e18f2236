import fc from 'fast-check';
import { expect, test } from 'vitest';
import { alarmsSeen, askedAndAnswered, seasonsBack, sparedBy } from '../../../hub/review/index.ts';
import type { Task } from '../../../hub/tasks/index.ts';

const HOUR = 3_600_000;
const T = Date.UTC(2026, 4, 10, 9);
const dayOf = (t: number) => new Date(t).toISOString().slice(0, 10);

const task = (more: Partial<Task> = {}): Task => ({
  ...{ id: 'a', key: 'a', kind: 'open-up', place: 'long-house', subject: null, state: 'ended' },
  ...{ verdict: 'act', because: [], missing: [], from: null, doBy: T + HOUR, minutes: 5 },
  ...{ saves: { amount: null, money: 10 }, alarm: null, openedAt: T, endedAt: T + HOUR / 2 },
  ...{ answer: 'done', until: null },
  ...more,
});

test('each task is counted once: done, done late, not doing, not needed or open', () => {
  const [open] = askedAndAnswered(
    [
      task(),
      task({ endedAt: T + 2 * HOUR }),
      task({ endedAt: T + 2 * HOUR, doBy: null }),
      task({ answer: 'no' }),
      task({ answer: null }),
      task({ state: 'open', endedAt: null, answer: null }),
      // Put off and open: nobody has answered it for good.
      task({ state: 'open', endedAt: null, answer: 'later' }),
    ],
    dayOf,
  );
  expect(open).toMatchObject({
    ...{ asked: 7, done: 2, late: 1, no: 1, lapsed: 1, open: 2 },
    ...{ minutesAsked: 35, minutesDone: 15 },
  });
});

test('what was spared lies between the largest of each place and day, and the sum of all', () => {
  const tasks = [
    task({ saves: { amount: null, money: 10 } }),
    task({ kind: 'shade', saves: { amount: null, money: 4 } }),
    task({ place: 'sun-house', saves: { amount: null, money: 3 } }),
    task({ openedAt: T + 24 * HOUR, saves: { amount: null, money: 2 } }),
    task({ saves: { amount: 1, money: null } }),
  ];
  // By hand: 10 + 3 + 2 at the least, 10 + 4 + 3 + 2 at the most.
  expect(sparedBy(tasks, dayOf)).toEqual({ low: 15, high: 19 });
  expect(askedAndAnswered(tasks, dayOf)[0]?.unvalued).toBe(1);
  expect(sparedBy([task({ saves: { amount: null, money: null } })], dayOf)).toBeNull();
});

test('for any tasks the counts make up those asked, and the lower figure is not above the higher', () => {
  const any = fc.record({
    kind: fc.constantFrom('open-up', 'cover', 'shade'),
    place: fc.constantFrom('a', 'b'),
    state: fc.constantFrom('open', 'ended'),
    answer: fc.constantFrom('done', 'no', 'later', null),
    openedAt: fc.integer({ min: T, max: T + 100 * HOUR }),
    endedAt: fc.integer({ min: T, max: T + 100 * HOUR }),
    doBy: fc.option(fc.integer({ min: T, max: T + 100 * HOUR })),
    minutes: fc.integer({ min: 0, max: 60 }),
    saves: fc.record({
      amount: fc.constant(null),
      money: fc.option(fc.integer({ min: -50, max: 50 })),
    }),
  });
  fc.assert(
    fc.property(fc.array(any), (drawn) => {
      const tasks = drawn.map((one) => task(one as Partial<Task>));
      const kinds = askedAndAnswered(tasks, dayOf);
      for (const { asked, done, late, no, lapsed, open } of kinds)
        expect(done + late + no + lapsed + open).toBe(asked);
      expect(kinds.reduce((sum, { asked }) => sum + asked, 0)).toBe(tasks.length);
      const spared = sparedBy(tasks, dayOf);
      if (spared) expect(spared.low).toBeLessThanOrEqual(spared.high);
    }),
  );
});

test.for([
  // Meteorological seasons of three calendar months from December (WMO No. 1203); by a calendar.
  ['2026-05-10', 52, 'spring', '2026-03-01', 'winter', '2025-12-01', '2026-02-28'],
  ['2026-03-01', 52, 'spring', '2026-03-01', 'winter', '2025-12-01', '2026-02-28'],
  ['2024-03-01', 52, 'spring', '2024-03-01', 'winter', '2023-12-01', '2024-02-29'],
  ['2025-12-31', 52, 'winter', '2025-12-01', 'autumn', '2025-09-01', '2025-11-30'],
  ['2026-01-15', 52, 'winter', '2025-12-01', 'autumn', '2025-09-01', '2025-11-30'],
  ['2026-01-15', -37, 'summer', '2025-12-01', 'spring', '2025-09-01', '2025-11-30'],
] as const)(
  'on %s at latitude %d it is %s, from %s',
  ([today, lat, season, from, before, begun, over]) => {
    const spans = seasonsBack(today, lat);
    expect(spans[0]).toMatchObject({ season, from, to: today });
    expect(spans[1]).toMatchObject({ season: before, from: begun, to: over });
    expect(spans).toHaveLength(6);
    expect(spans[5]).toMatchObject({ season: null, to: today });
  },
);

test('twelve months are told to the day', () => {
  expect(seasonsBack('2026-05-10', 52).at(-1)).toMatchObject({ from: '2025-05-11' });
  expect(seasonsBack('2024-02-29', 52).at(-1)).toMatchObject({ from: '2023-03-02' });
});

test('alarms tell how soon half and the slowest were seen, and which ended unseen', () => {
  const alarm = (since: number, seenAt: number | null, clearedAt: number | null) => ({
    head: {
      ...{ id: `a~${since}`, place: 'cool-room', kind: 'warm', since, words: '', clearedAt },
      ...{ seenBy: seenAt === null ? null : 'Ann', seenAt, was: null },
    },
    ...{ folded: [], standing: clearedAt === null, clearedAt, count: 1 },
  });
  const seen = alarmsSeen([
    alarm(T, T + 60_000, T + HOUR),
    alarm(T + HOUR, T + HOUR + 180_000, T + 2 * HOUR),
    alarm(T + 3 * HOUR, T + 3 * HOUR + 600_000, null),
    alarm(T + 5 * HOUR, null, T + 6 * HOUR),
    alarm(T + 7 * HOUR, null, null),
  ]);
  expect(seen).toEqual([
    {
      ...{ kind: 'warm', raised: 5, seen: 3, neverSeen: 1 },
      ...{ minutesToSeen: 3, slowest: 10, falseOnes: 0 },
    },
  ]);
});
