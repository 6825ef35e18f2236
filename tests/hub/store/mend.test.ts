import {
  copyFileSync,
  existsSync,
  readdirSync,
  readFileSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { calendarOf } from '../../../hub/clock.ts';
import {
  backUpStore,
  mendFile,
  openOrMend,
  openStore,
  type Store,
  type StoredReading,
} from '../../../hub/store/index.ts';
import { tempFolder } from '../tempStore.ts';

const T = Date.UTC(2026, 4, 10);
const MINUTE = 60_000;
const PER_SERIES = 3000;
const PROBES = ['p1', 'p2', 'p3'];
const { bounds, dayOf } = calendarOf('Europe/Dublin');

/** A store of three series with tasks, people and a record; its pages are found by their content. */
function filled(folder = tempFolder(), upTo = PER_SERIES) {
  const file = join(folder, 'dewpost.db');
  const store = openStore(file);
  store.transaction(() => {
    for (const probe of PROBES)
      store.readings.add(
        Array.from(
          { length: upTo },
          (_, i): StoredReading => ({
            probe,
            quantity: 'temperature',
            t: T + i * MINUTE,
            value: i / 10,
            raw: null,
            flag: null,
          }),
        ),
      );
    store.rollups.fold((t) => bounds(dayOf(t)));
    records(store);
  });
  store.close();
  return file;
}
function records(store: Store) {
  store.putFarm('a farm');
  store.people.add('Ann', 'hash');
  for (let i = 0; i < 50; i++) {
    store.tasks.put({
      id: `task-${i}`,
      key: `key-${i}`,
      state: 'open',
      body: '{}',
      openedAt: T,
      endedAt: null,
    });
    store.journal.add({ t: T, who: 'Ann', what: 'x', place: null, subject: null, body: { i } });
  }
}
const kept = (file: string) => {
  const store = openStore(file);
  const facts = {
    readings: PROBES.map((probe) => store.readings.between(probe, 'temperature', 0, T * 2).length),
    tasks: store.tasks.open().length,
    record: store.journal.between('x', 0, T * 2).length,
    people: store.people.claimed(),
    farm: store.farm(),
  };
  store.close();
  const db = new Database(file);
  const found = db.pragma('integrity_check', { simple: true });
  db.close();
  return { ...facts, found };
};
const whole = {
  readings: [PER_SERIES, PER_SERIES, PER_SERIES],
  tasks: 50,
  record: 50,
  people: true,
  farm: 'a farm',
  found: 'ok',
};
/** Spoils the pages of a table from one share of the way through them to another. */
function spoil(file: string, table: string, from: number, to: number) {
  const db = new Database(file, { readonly: true });
  const page = db.pragma('page_size', { simple: true }) as number;
  const pages = db
    .prepare<[string], number>('SELECT pageno FROM dbstat WHERE name = ? ORDER BY path')
    .pluck()
    .all(table);
  db.close();
  const bytes = readFileSync(file);
  const spoilt = pages.slice(Math.floor(pages.length * from), Math.ceil(pages.length * to));
  for (const number of spoilt) bytes.fill(0x5a, (number - 1) * page, number * page);
  writeFileSync(file, bytes);
  return spoilt.length;
}
const mend = (file: string, backups: string | null = null) => {
  const { store, mended } = openOrMend(file, backups, 'now');
  store.close();
  return mended;
};

test('a whole store is opened as it is', () => {
  const file = filled();
  expect(mend(file)).toBeNull();
  expect(kept(file)).toEqual(whole);
});

test('a cut file is moved aside, and all that can be read of it is saved', () => {
  const file = filled();
  const before = readFileSync(file);
  truncateSync(file, Math.floor(statSync(file).size * 0.7));
  const mended = mend(file);
  expect(mended?.aside).toBe(join(dirname(file), 'dewpost.damaged-now.db'));
  expect(readFileSync(mended?.aside ?? '').length).toBe(Math.floor(before.length * 0.7));
  const after = kept(file);
  expect(after.found).toBe('ok');
  expect(after.readings.reduce((sum, n) => sum + n, 0)).toBeGreaterThan(PER_SERIES);
  expect(after.readings.reduce((sum, n) => sum + n, 0)).toBe(mended?.readings);
});

test('what a cut file has lost comes from the newest good backup', () => {
  const file = filled();
  const backups = tempFolder();
  backUpStore(file, join(backups, 'dewpost-2026-05-01.db'));
  writeFileSync(join(backups, 'dewpost-2026-05-02.db'), 'this copy was cut off');
  truncateSync(file, Math.floor(statSync(file).size * 0.4));
  expect(mend(file, backups)?.backup).toBe(join(backups, 'dewpost-2026-05-01.db'));
  expect(kept(file)).toEqual(whole);
});

test('of a file that is no database any more everything comes from the backup', () => {
  const file = filled();
  const backups = tempFolder();
  backUpStore(file, join(backups, 'dewpost-2026-05-01.db'));
  writeFileSync(file, 'nothing of it is left');
  expect(mend(file, backups)).toMatchObject({
    readings: 0,
    damaged: expect.arrayContaining(['readings', 'tasks', 'journal']),
  });
  expect(kept(file)).toEqual(whole);
});

test('spoilt pages in the middle of the readings cost those readings only', () => {
  const file = filled();
  expect(spoil(file, 'readings', 0.4, 0.45)).toBeGreaterThan(2);
  const store = openStore(file);
  expect(() =>
    PROBES.map((probe) => store.readings.between(probe, 'temperature', 0, T * 2)),
  ).toThrow(/malformed/);
  store.close();
  expect(mendFile(file, null, 'now').damaged).toContain('readings');
  const after = kept(file);
  expect(after).toMatchObject({ ...whole, readings: expect.anything() });
  const saved = after.readings.reduce((sum, n) => sum + n, 0);
  expect(saved).toBeGreaterThan(3 * PER_SERIES * 0.85);
  expect(saved).toBeLessThan(3 * PER_SERIES);
});
test('readings that came after the backup are saved beside those that only it still has', () => {
  const backups = tempFolder();
  const older = filled(tempFolder(), PER_SERIES - 500);
  copyFileSync(older, join(backups, 'dewpost-2026-05-01.db'));
  const file = filled();
  spoil(file, 'readings', 0.1, 0.15);
  expect(mendFile(file, backups, 'now').backup).not.toBeNull();
  expect(kept(file)).toEqual(whole);
});

test('a damaged store is mended while the hub runs, and goes on being used', async () => {
  const file = filled();
  const store = openStore(file);
  spoil(file, 'readings', 0.6, 0.7);
  store.note(Object.assign(new Error('malformed'), { code: 'SQLITE_CORRUPT' }));
  const mended = await store.recover(() => mendFile(file, null, 'now'));
  expect(mended?.damaged).toContain('readings');
  expect(store.trouble()).toBeNull();
  expect(store.farm()).toBe('a farm');
  store.close();
  expect(kept(file)).toMatchObject({ tasks: 50, found: 'ok' });
});

test('damage twice leaves both damaged files', () => {
  const file = filled();
  truncateSync(file, 5000);
  mend(file);
  truncateSync(file, 3000);
  mend(file);
  const names = readdirSync(dirname(file)).filter((name) => name.includes('damaged'));
  expect(names.sort()).toEqual(['dewpost.damaged-now-2.db', 'dewpost.damaged-now.db']);
  expect(existsSync(file)).toBe(true);
});

test("another program's database is still refused, and left as it is", () => {
  const file = join(tempFolder(), 'dewpost.db');
  const db = new Database(file);
  db.exec('CREATE TABLE songs (name TEXT)');
  db.close();
  expect(() => openOrMend(file, null, 'now')).toThrow(/another program's database/);
});
