import { existsSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, onTestFinished, test } from 'vitest';
import {
  openOrMend,
  openStore,
  type Store,
  type StoredReading,
  troubleOf,
} from '../../../hub/store/index.ts';
import { fillUp, remount, smallCard } from '../smallCard.ts';
import { tempFolder } from '../tempStore.ts';

const T = Date.UTC(2026, 4, 10, 9);
const reading = (t: number, value = 20): StoredReading => ({
  probe: 'p1',
  quantity: 'temperature',
  t,
  value,
  raw: null,
  flag: null,
});
const keep = (store: Store, ...readings: StoredReading[]) =>
  store.keep({ readings, amendments: [], refusals: [], heard: [] }, T, () => {});
const notMended = () => {
  throw new Error('Expected nothing to mend');
};
function opened(folder: string) {
  const store = openStore(join(folder, 'dewpost.db'));
  onTestFinished(() => store.close());
  return store;
}
/** As another start would find it. */
const found = (file: string) => {
  const store = openStore(file);
  const readings = store.readings.between('p1', 'temperature', 0, T * 2).map(({ t }) => t - T);
  store.close();
  return readings;
};

test.for([
  ['SQLITE_FULL', 'full'],
  ['ENOSPC', 'full'],
  ['SQLITE_READONLY_DBMOVED', 'read-only'],
  ['SQLITE_CORRUPT_INDEX', 'damaged'],
  ['SQLITE_NOTADB', 'damaged'],
  ['SQLITE_IOERR_FSYNC', 'failing'],
  ['SQLITE_CONSTRAINT_UNIQUE', null],
  ['SQLITE_BUSY', null],
] as const)('%s means that the store is %s', ([code, trouble]) => {
  expect(troubleOf(Object.assign(new Error('x'), { code }))).toBe(trouble);
});

test('a full card keeps nothing and says so; with room again it goes on by itself', async (context) => {
  const card = smallCard(24);
  if (card === null) return context.skip('needs the right to mount a small card');
  const store = opened(card);
  keep(store, reading(T));
  const makeRoom = fillUp(card);
  let kept = 1;
  // The log has some room of its own: what fits there is kept, and may be acknowledged.
  expect(() => {
    for (; kept < 100_000; kept++) keep(store, reading(T + kept));
  }).toThrow(/full/);
  expect(store.trouble()).toBe('full');
  expect(store.readings.newest('p1', 'temperature')?.t).toBe(T + kept - 1);
  expect(await store.recover(notMended)).toBeNull();
  expect(store.trouble()).toBe('full');
  makeRoom();
  await store.recover(notMended);
  expect(store.trouble()).toBeNull();
  keep(store, reading(T + 200_000));
  expect(store.readings.between('p1', 'temperature', 0, T * 2)).toHaveLength(kept + 1);
  store.close();
  expect(found(join(card, 'dewpost.db'))).toHaveLength(kept + 1);
});

test('a file that is deleted under the hub comes back with all that was acknowledged', async () => {
  const folder = tempFolder();
  const file = join(folder, 'dewpost.db');
  const store = opened(folder);
  keep(store, reading(T));
  for (const rest of ['', '-wal', '-shm']) rmSync(`${file}${rest}`, { force: true });
  expect(() => keep(store, reading(T + 1))).toThrow(/^Expected the store in /);
  expect(store.trouble()).toBe('gone');
  expect(store.readings.newest('p1', 'temperature')?.t).toBe(T);
  await store.recover(notMended);
  expect(store.trouble()).toBeNull();
  keep(store, reading(T + 2));
  // The power goes here: the file on the disk has both.
  const copy = join(tempFolder(), 'dewpost.db');
  for (const rest of ['', '-wal'])
    if (existsSync(`${file}${rest}`)) {
      const db = new Database(copy);
      db.close();
      renameSync(`${file}${rest}`, `${copy}${rest}`);
    }
  expect(found(copy)).toEqual([0, 2]);
});

test('the whole folder deleted under the hub comes back, too', async () => {
  const folder = join(tempFolder(), 'data');
  const store = opened(folder);
  keep(store, reading(T));
  rmSync(folder, { recursive: true });
  expect(store.isThere()).toBe(false);
  await store.recover(notMended);
  expect(store.trouble()).toBeNull();
  store.close();
  expect(found(join(folder, 'dewpost.db'))).toEqual([0]);
});

test('another store that was put in its place is used, and not written over', async () => {
  const folder = tempFolder();
  const file = join(folder, 'dewpost.db');
  const other = openStore(join(folder, 'other.db'));
  keep(other, reading(T + 7));
  other.close();
  const store = opened(folder);
  keep(store, reading(T));
  renameSync(join(folder, 'other.db'), file);
  expect(() => keep(store, reading(T + 1))).toThrow();
  await store.recover(notMended);
  expect(store.readings.between('p1', 'temperature', 0, T * 2).map(({ t }) => t - T)).toEqual([7]);
});

test('a hub that starts on a card that lets nothing be written works on a copy until it can write', async (context) => {
  const card = smallCard(24);
  if (card === null) return context.skip('needs the right to mount a small card');
  const file = join(card, 'dewpost.db');
  const before = openStore(file);
  keep(before, reading(T));
  before.close();
  remount(card, 'ro');
  const { store } = openOrMend(file, null, 'now');
  expect(store.trouble()).toBe('read-only');
  expect(store.readings.newest('p1', 'temperature')?.t).toBe(T);
  expect(() => keep(store, reading(T + 1))).toThrow(/^Expected to write to the store in /);
  await store.recover(notMended);
  expect(store.trouble()).toBe('read-only');
  remount(card, 'rw');
  await store.recover(notMended);
  expect(store.trouble()).toBeNull();
  keep(store, reading(T + 2));
  store.close();
  expect(found(file)).toEqual([0, 2]);
});

test('a hub that starts on a full card works on a copy until there is room', async (context) => {
  const card = smallCard(24);
  if (card === null) return context.skip('needs the right to mount a small card');
  const file = join(card, 'dewpost.db');
  const before = openStore(file);
  keep(before, reading(T));
  before.close();
  const makeRoom = fillUp(card);
  const { store } = openOrMend(file, null, 'now');
  expect(store.trouble()).not.toBeNull();
  expect(store.readings.newest('p1', 'temperature')?.t).toBe(T);
  makeRoom();
  await store.recover(notMended);
  expect(store.trouble()).toBeNull();
  keep(store, reading(T + 2));
  store.close();
  expect(found(file)).toEqual([0, 2]);
});
