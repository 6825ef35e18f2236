import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { clockFrom, spawnHub, startHub } from './hubProcess.ts';
import { type Killing, killing } from './killedHub.ts';
import { freePort, killed, tempFolder } from './processes.ts';
import { brokenStore, doubledTasks, lostAnswers, lostReadings } from './storeFaults.ts';

// The short form; `npm run test:long` kills ten times as often.

const KILLS = 10;
const OTHERS = 3; // each: while it puts readings away, starts, and a backup is made
const START = Date.UTC(2026, 4, 12, 10);

const data = tempFolder();
let run: Killing;
let db: Database.Database;
beforeAll(async () => {
  const ports = { http: await freePort(), mqtt: await freePort() };
  // Five hours in a minute: tasks open, change and lapse while the hub is being killed.
  run = killing(data, ports, clockFrom(START, 300), 20_260_512);
  for (let kill = 0; kill < KILLS; kill++) {
    await run.underLoad();
    if (kill >= OTHERS) continue;
    await run.underLoad('fold');
    await run.duringStart();
    await run.duringBackup(join(data, 'copy.db'));
    await run.duringImport();
  }
  const farm = join(data, 'rooms.yaml');
  const last = await startHub({ data, farm, open: true, ...ports, clock: run.clock });
  expect((await last.stop()).code).toBe(0);
  db = new Database(join(data, 'dewpost.db'), { readonly: true });
}, 240_000);
afterAll(() => db?.close());

test('the load was a load: readings of every probe, answers, tasks and alarms', () => {
  expect(new Set(run.acknowledged.map(({ probe }) => probe)).size).toBe(run.publishers);
  expect(run.acknowledged.length).toBeGreaterThan(KILLS * 50);
  expect(run.answered.length).toBeGreaterThan(0);
  const { opened, alarms } = doubledTasks(db);
  expect(opened).toBeGreaterThan(3);
  expect(alarms).toBeGreaterThan(3);
});

test('every acknowledged reading is kept exactly once, with its value', () => {
  expect(lostReadings(db, run.acknowledged)).toEqual([]);
});

test('nothing is kept that nobody sent', () => {
  const counted = db.prepare<[], number>(
    `SELECT count(*) FROM readings JOIN series ON series.id = series_id WHERE probe <> 'imported'`,
  );
  const kept = counted.pluck().get() ?? 0;
  expect(kept).toBeGreaterThanOrEqual(run.acknowledged.length);
  expect(kept).toBeLessThanOrEqual(run.acknowledged.length + run.cutOff());
});

test('the store is sound, and its roll-ups agree with its readings', () => {
  expect(brokenStore(db)).toEqual([]);
});

test('no task stands twice, none is opened again before it has ended, no alarm is raised twice', () => {
  expect(doubledTasks(db).faults).toEqual([]);
});

test('every answer that the hub took is in the record once', () => {
  expect(lostAnswers(db, run.answered)).toEqual([]);
});

test('a store that is killed while it is brought up to date is the old one or the new one', async () => {
  const old = new URL('../fixtures/stores/version1.db', import.meta.url).pathname;
  for (let kill = 0; kill < OTHERS; kill++) {
    const folder = tempFolder();
    const file = join(folder, 'dewpost.db');
    copyFileSync(old, file);
    const hub = await spawnHub({ data: folder, open: true });
    await pause(250 + kill * 80); // about when it opens the store
    await killed(hub.child);
    expect(upgraded(file)).toEqual({ readings: 1057, tasks: 5, found: 'ok', known: true });
    const again = await startHub({ data: folder, open: true });
    await again.stop();
    expect(upgraded(file)).toMatchObject({ readings: 1057, found: 'ok', known: true });
  }
});

function upgraded(file: string) {
  const opened = new Database(file);
  const count = (table: string) =>
    opened.prepare<[], number>(`SELECT count(*) FROM ${table}`).pluck().get();
  const version = opened.pragma('user_version', { simple: true }) as number;
  const tables = opened
    .prepare<[], number>("SELECT count(*) FROM sqlite_master WHERE name = 'inbox'")
    .pluck()
    .get();
  const facts = {
    readings: count('readings'),
    tasks: count('tasks'),
    found: opened.pragma('integrity_check', { simple: true }),
    known: version === 1 ? tables === 0 : tables === 1,
  };
  opened.close();
  return facts;
}
