import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { clockFrom, spawnHub, startHub } from '../endToEnd/hubProcess.ts';
import { type Killing, killing } from '../endToEnd/killedHub.ts';
import { freePort, killed, tempFolder } from '../endToEnd/processes.ts';
import { brokenStore, doubledTasks, lostAnswers, lostReadings } from '../endToEnd/storeFaults.ts';

// Two hundred kills at random moments under load, and twenty each while readings are put away, while
// the hub starts, while a backup is made and while an older store is brought up to date.

const KILLS = 200;
const OTHERS = 20;
const data = tempFolder();
let run: Killing;
let db: Database.Database;
beforeAll(async () => {
  const ports = { http: await freePort(), mqtt: await freePort() };
  run = killing(data, ports, clockFrom(Date.UTC(2026, 4, 12, 10), 100), 20_260_513);
  for (let kill = 0; kill < KILLS; kill++) {
    await run.underLoad();
    if (kill % Math.floor(KILLS / OTHERS) !== 0) continue;
    await run.underLoad('fold');
    await run.duringStart();
    await run.duringBackup(join(data, 'copy.db'));
    await run.duringImport();
  }
  const farm = join(data, 'rooms.yaml');
  const last = await startHub({ data, farm, open: true, ...ports, clock: run.clock });
  expect((await last.stop()).code).toBe(0);
  db = new Database(join(data, 'dewpost.db'), { readonly: true });
});
afterAll(() => db?.close());

test('0 acknowledged readings are lost', () => {
  process.stdout.write(`${run.acknowledged.length} acknowledged readings\n`);
  expect(run.acknowledged.length).toBeGreaterThan(KILLS * 50);
  expect(lostReadings(db, run.acknowledged)).toEqual([]);
});

test('0 tasks or alarms are doubled', () => {
  const { faults, opened, alarms } = doubledTasks(db);
  process.stdout.write(`${opened} tasks opened, ${alarms} alarms raised\n`);
  expect(opened).toBeGreaterThan(20);
  expect(alarms).toBeGreaterThan(20);
  expect(faults).toEqual([]);
  expect(lostAnswers(db, run.answered)).toEqual([]);
});

test('the store is sound, and its roll-ups agree with its readings', () => {
  expect(brokenStore(db)).toEqual([]);
});

test('a store that is killed while it is brought up to date is the old one or the new one', async () => {
  const old = new URL('../fixtures/stores/version1.db', import.meta.url).pathname;
  for (let kill = 0; kill < OTHERS; kill++) {
    const folder = tempFolder();
    const file = join(folder, 'dewpost.db');
    copyFileSync(old, file);
    const hub = await spawnHub({ data: folder, open: true });
    await pause(150 + kill * 25);
    await killed(hub.child);
    const opened = new Database(file);
    expect(opened.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(opened.prepare('SELECT count(*) FROM readings').pluck().get()).toBe(1057);
    const inbox = opened.prepare("SELECT 1 FROM sqlite_master WHERE name = 'inbox'").get();
    expect(inbox !== undefined).toBe(opened.pragma('user_version', { simple: true }) !== 1);
    opened.close();
  }
});
