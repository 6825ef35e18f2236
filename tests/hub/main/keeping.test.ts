import { existsSync, mkdirSync, readdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { keepUp } from '../../../hub/main/keeping/keeping.ts';
import type { Store, StoredReading } from '../../../hub/store/index.ts';
import { HOUR, MINUTE, quietLog, smallHub } from '../smallFarm.ts';
import { tempFolder } from '../tempStore.ts';

const DAY = 24 * HOUR;
const T = Date.UTC(2026, 4, 10, 9);
const RAW_DAYS = 60;
const END = Number.MAX_SAFE_INTEGER;

/** A hub with a reading every ten minutes over so many days, all put away. */
function aged(days: number) {
  const hub = smallHub({ now: T });
  for (let t = T - days * DAY; t < T; t += 5 * DAY) {
    const readings: StoredReading[] = [];
    for (let at = t; at < Math.min(T, t + 5 * DAY); at += 10 * MINUTE)
      for (const quantity of ['temperature', 'humidity'])
        readings.push({
          probe: 'p1',
          quantity,
          t: at,
          value: quantity === 'humidity' ? 80 : 15 + (at % (7 * HOUR)) / HOUR,
          raw: null,
          flag: null,
        });
    hub.store.transaction(() => hub.store.readings.add(readings));
  }
  hub.store.probes.heard('p1', 300_000, T);
  hub.core.look();
  const keeping = keepUp({ core: hub.core, log: quietLog, backups: null, rawDays: RAW_DAYS });
  return { ...hub, keeping };
}
const idOf = (store: Store) => store.readings.idOf('p1', 'temperature') ?? -1;
const rolled = (store: Store) => ({
  hours: store.rollups.hours(idOf(store), 0, END),
  days: store.rollups.days(idOf(store), 0, END),
});
const daysOf = ({ core, clock }: ReturnType<typeof aged>) =>
  core.snapshots.days.between('long-house', '', '9999-12-31', clock.now());

test('old readings go; their hours, days and what was made of them stay as they were', async () => {
  const hub = aged(90);
  const before = { rolled: rolled(hub.store), days: daysOf(hub) };
  await hub.keeping.trim();
  const left = hub.store.readings.between('p1', 'temperature', 0, END);
  expect(left[0]?.t).toBe(Date.UTC(2026, 2, 10, 23) + HOUR); // 60 days back, midnight in Dublin
  expect(rolled(hub.store)).toEqual(before.rolled);
  expect(daysOf(hub)).toEqual(before.days);
  expect(hub.store.readings.oldestAt('p1', 'temperature')).toBe(T - 90 * DAY);
  expect(hub.keeping.facts().rawFrom).toBe(Date.UTC(2026, 2, 11));
});

test('letting go again the next night takes one day more, and nothing else changes', async () => {
  const hub = aged(70);
  await hub.keeping.trim();
  const before = rolled(hub.store);
  hub.clock.set(T + DAY);
  await hub.keeping.trim();
  expect(hub.store.readings.between('p1', 'temperature', 0, END)[0]?.t).toBe(Date.UTC(2026, 2, 12));
  expect(rolled(hub.store)).toEqual(before);
});

test('a late reading of an hour whose readings are gone does not spoil that hour', async () => {
  const hub = aged(90);
  await hub.keeping.trim();
  const before = rolled(hub.store);
  const old = { probe: 'p1', quantity: 'temperature', t: T - 80 * DAY + 1, value: -30 };
  hub.store.keep(
    { readings: [{ ...old, raw: null, flag: null }], amendments: [], refusals: [], heard: [] },
    T,
    () => {},
  );
  expect(rolled(hub.store)).toEqual(before);
  hub.core.snapshots.fold(true);
  expect(rolled(hub.store)).toEqual(before);
  await hub.keeping.trim();
  expect(rolled(hub.store)).toEqual(before);
});

test('a farm described anew does not throw away days that cannot be made again', async () => {
  const hub = aged(90);
  await hub.keeping.trim();
  const before = daysOf(hub);
  hub.core.refarmed();
  hub.store.placeFacts.drop('long-house', '0000-01-01', '9999-12-31');
  expect(daysOf(hub)).toEqual(before);
});

test('years that are taken in later have their hours before their readings go', async () => {
  const hub = aged(10);
  await hub.keeping.trim();
  const readings = Array.from(
    { length: 500 },
    (_, i): StoredReading => ({
      probe: 'p1',
      quantity: 'temperature',
      t: T - 400 * DAY + i * 10 * MINUTE,
      value: 10,
      raw: null,
      flag: null,
    }),
  );
  hub.store.transaction(() => hub.store.readings.add(readings));
  await hub.keeping.trim();
  expect(hub.store.readings.between('p1', 'temperature', 0, T - 60 * DAY)).toEqual([]);
  const { hours } = rolled(hub.store);
  expect(hours.filter(({ t }) => t < T - 300 * DAY).reduce((n, hour) => n + hour.n, 0)).toBe(500);
});

test('a file gives the room back to the card', async () => {
  const hub = aged(400);
  hub.core.snapshots.fold(true);
  const before = statSync(hub.path).size + (statSync(`${hub.path}-wal`).size ?? 0);
  await hub.keeping.trim();
  hub.store.close();
  expect(statSync(hub.path).size).toBeLessThan(before * 0.6);
});

test('a backup is made, told of, and follows the stick in and out', async () => {
  const hub = smallHub({ now: T });
  hub.send('p1', 'temperature', T, 20);
  const stick = join(tempFolder(), 'stick');
  mkdirSync(stick);
  const keeping = keepUp({ core: hub.core, log: quietLog, backups: stick, rawDays: RAW_DAYS });
  expect(keeping.facts().backup).toMatchObject({ wanted: true, at: null, fault: null });
  await keeping.backUp();
  expect(readdirSync(stick)).toEqual(['dewpost-2026-05-10.db']);
  expect(keeping.facts().backup).toMatchObject({ fault: null, absent: false });
  expect(keeping.facts().backup.at).not.toBeNull();
  rmSync(stick, { recursive: true });
  await keeping.backUp();
  expect(keeping.facts().backup).toMatchObject({
    at: null,
    absent: true,
    fault: `Expected the folder ${stick} for backups, got none`,
  });
  expect(existsSync(stick)).toBe(false); // not made on the card, where the stick should be
  mkdirSync(stick);
  await keeping.backUp();
  expect(keeping.facts().backup).toMatchObject({ fault: null, absent: false });
});
