import fc from 'fast-check';
import { expect, test } from 'vitest';
import { farmText, HOUR, MINUTE, servedHub } from '../smallFarm.ts';

const T = Date.UTC(2026, 4, 10, 9);
const DAY = 24 * HOUR;
const iso = (t: number) => new Date(t).toISOString();

async function withReadings(
  given: [number, number][],
  options: Parameters<typeof servedHub>[0] = {},
) {
  const hub = await servedHub({ now: T, ...options });
  hub.core.intake.receiveReadings(
    given.map(([t, value]) => ({ probe: 'p1', quantity: 'light' as const, t, value })),
    options.now ?? T,
    () => {},
  );
  hub.core.intake.flush();
  hub.core.snapshots.fold();
  const series = async (from: number, to: number, points = 500, more = '') => {
    const query = `place=long-house&quantity=light&from=${iso(from)}&to=${iso(to)}&points=${points}${more}`;
    const reply = await hub.app.inject({ url: `/api/series?${query}` });
    return { status: reply.statusCode, ...reply.json() };
  };
  return { ...hub, series };
}
const every5 = (from: number, to: number): [number, number][] =>
  Array.from({ length: Math.floor((to - from) / (5 * MINUTE)) }, (_, i) => [
    from + i * 5 * MINUTE,
    (i % 24) + 1,
  ]);

test('a short stretch is shown reading by reading', async () => {
  const { series } = await withReadings(every5(T - 2 * HOUR, T));
  const { level, t, mean, min, max } = await series(T - HOUR, T);
  expect(level).toBe('raw');
  expect(t).toHaveLength(12);
  expect([min, max]).toEqual([mean, mean]);
});

test('a gap is a null between two readings, never a line', async () => {
  const { series } = await withReadings([
    ...every5(T - 4 * HOUR, T - 3 * HOUR),
    ...every5(T - HOUR, T),
  ]);
  const { t, mean } = await series(T - 4 * HOUR, T);
  const at = mean.indexOf(null);
  expect(mean.filter((value: number | null) => value === null)).toHaveLength(1);
  expect(t[at]).toBeGreaterThan(T - 3 * HOUR - 5 * MINUTE);
  expect(t[at]).toBeLessThan(T - HOUR);
});

test('a longer stretch is shown by the hour, with lowest, mean and highest', async () => {
  const { series } = await withReadings(every5(T - 3 * DAY, T));
  const { level, t, mean, min, max } = await series(T - 2 * DAY, T, 100);
  expect(level).toBe('hour');
  expect(t).toHaveLength(48);
  expect([min[0], mean[0], max[0]]).toEqual([1, 6.5, 12]);
});

test('a season is shown by the farm’s days, and days without readings are null', async () => {
  const { series } = await withReadings([
    ...every5(T - 10 * DAY, T - 8 * DAY),
    ...every5(T - 3 * DAY, T),
  ]);
  const { level, t, mean } = await series(T - 20 * DAY, T, 50);
  expect(level).toBe('day');
  expect(t).toHaveLength(21);
  expect(new Date(t[5]).toISOString()).toMatch(/T23:00:00/); // local midnight in summer
  expect(mean.filter((value: number | null) => value === null).length).toBe(14);
});

test('the first day of a range is there even when the clocks went back on it', async () => {
  const end = Date.UTC(2026, 9, 30);
  const night = Date.UTC(2026, 9, 25, 23, 45); // 23:45 on the day of 25 hours
  const { series } = await withReadings(every5(Date.UTC(2026, 9, 24), Date.UTC(2026, 9, 29)), {
    now: end,
    farm: farmText(),
  });
  const { level, mean } = await series(night, Date.UTC(2026, 9, 29), 3);
  expect(level).toBe('day');
  expect(mean[0]).not.toBeNull();
});

test('twenty years have no more points than asked for, or are refused', async () => {
  const { series } = await withReadings(every5(T - DAY, T));
  const years = await series(T - 20 * 365 * DAY, T, 100);
  expect(years.status === 400 || years.t.length <= 100).toBe(true);
});

test('after a move the days of the old place hold only what was measured there', async () => {
  const before = T - 2 * DAY;
  const hub = await withReadings([
    ...every5(before, before + 6 * HOUR),
    ...every5(before + 7 * HOUR, before + 9 * HOUR).map(([t]): [number, number] => [t, 999]),
  ]);
  hub.store.probes.place('p1', 'outside', 'grass', before + 6.5 * HOUR);
  hub.core.refarmed();
  const { level, max } = await hub.series(T - 5 * DAY, T, 10);
  expect(level).toBe('day');
  expect(max.filter((value: number | null) => value !== null && value > 24)).toEqual([]);
});

test('at every level the shape is four columns of one length, in order of time', async () => {
  const { series } = await withReadings(every5(T - 3 * DAY, T));
  await fc.assert(
    fc.asyncProperty(
      fc.integer({ min: 1, max: 6000 }),
      fc.integer({ min: 0, max: 6000 }),
      fc.integer({ min: 1, max: 5000 }),
      async (minutes, before, points) => {
        const to = T - before * MINUTE;
        const { level, t, mean, min, max } = await series(to - minutes * MINUTE, to, points);
        expect(['raw', 'hour', 'day']).toContain(level);
        expect([mean.length, min.length, max.length]).toEqual([t.length, t.length, t.length]);
        for (let i = 1; i < t.length; i++) expect(t[i]).toBeGreaterThan(t[i - 1]);
        for (let i = 0; i < t.length; i++)
          if (mean[i] !== null) {
            expect(min[i]).toBeLessThanOrEqual(mean[i]);
            expect(max[i]).toBeGreaterThanOrEqual(mean[i]);
          } else expect([min[i], max[i]]).toEqual([null, null]);
      },
    ),
    { numRuns: 60 },
  );
});

test.for([
  ['place=nowhere', 404, 'nowhere'],
  ['quantity=colour', 400, 'quantity'],
  ['spot=roof', 400, 'spot'],
  ['points=0', 400, 'points'],
  ['points=9999', 400, 'points'],
  ['from=2026-05-10', 400, 'from'],
  ['to=2020-01-01T00:00:00Z', 400, 'from before'],
] as const)('a series with %s is refused with %d', async ([wrong, status, word]) => {
  const { app } = await servedHub({ now: T });
  const query = new URLSearchParams({
    place: 'long-house',
    quantity: 'light',
    from: iso(T - HOUR),
    to: iso(T),
  });
  const [name = '', value = ''] = wrong.split('=');
  query.set(name, value);
  const reply = await app.inject({ url: `/api/series?${query}` });
  expect(reply.statusCode).toBe(status);
  expect(reply.json().error).toContain(word);
});
