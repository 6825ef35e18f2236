import { expect, test } from 'vitest';
import { allKg, allLost } from './seasonBooks.ts';
import { runSeason, type SeasonJob } from './seasonRun.ts';
import { pairsOf, tableOf } from './seasonTable.ts';

// The short form of `npm run bench:season`: three weeks of one invented farm, the whole hub in it.

const job: Omit<SeasonJob, 'way'> = {
  ...{ seed: 201, days: 21, look: 60, begins: Date.UTC(2026, 4, 4) },
  habits: { vents: true, covers: true },
};

test('three weeks with the whole hub: tasks are asked, some are done, and all of it is counted', {
  timeout: 240_000,
}, () => {
  const clock = runSeason({ ...job, way: 'clock' });
  const hub = runSeason({ ...job, way: 'hub' });
  const { tasks } = hub.books;
  expect(tasks['leave-open']?.asked).toBeGreaterThan(0);
  expect(tasks['leave-open']?.done).toBeGreaterThan(0);
  // Vents that are left open are neither shut nor opened: that is work spared.
  expect(hub.books.minutes.vents).toBeLessThan(clock.books.minutes.vents);
  expect(hub.books.minutes.answers).toBeGreaterThan(0);
  // Three weeks of healthy probes: nobody is sent to one.
  expect(tasks['see-to-probe']?.asked ?? 0).toBe(0);
  expect(clock.books.tasks).toEqual({});
  const [pair] = pairsOf([hub, clock]);
  expect(pair?.hub).toBe(hub.books);
  expect(tableOf(pair ? [pair] : [], job.days)).toHaveLength(3);
});

test('a season is the same whenever it is lived through, and another farm has another', () => {
  const short = { ...job, way: 'clock' } as const;
  expect(runSeason(short).books).toEqual(runSeason(short).books);
  expect(runSeason({ ...short, seed: 202 }).books).not.toEqual(runSeason(short).books);
});

test('nobody who leaves every vent shut loses as little as who opens by the clock', () => {
  const summer = { ...job, days: 90, begins: Date.UTC(2026, 4, 1) };
  const open = runSeason({ ...summer, way: 'clock' }).books;
  const shut = runSeason({
    ...summer,
    way: 'clock',
    habits: { vents: false, covers: false },
  }).books;
  expect(allLost(shut)).toBeGreaterThan(1.2 * allLost(open));
  expect(allKg(shut)).toBeLessThan(allKg(open));
});
