import { existsSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { toDrop } from '../../../hub/store/backups.ts';
import {
  backUpStore,
  dropOld,
  newestBackupAt,
  openStore,
  restoreStore,
} from '../../../hub/store/index.ts';
import { tempFolder } from '../tempStore.ts';

const DAY = 86_400_000;
const T = Date.UTC(2026, 4, 10, 9);
const nameOf = (t: number) => `dewpost-${new Date(t).toISOString().slice(0, 10)}.db`;

function storeWith(farm: string, folder = tempFolder()) {
  const file = join(folder, 'dewpost.db');
  const store = openStore(file);
  store.putFarm(farm);
  const reading = { probe: 'p1', quantity: 'temperature', raw: null, flag: null };
  store.keep(
    { readings: [{ ...reading, t: T, value: 20 }], amendments: [], refusals: [], heard: [] },
    T,
    () => {},
  );
  return { file, store };
}
const farmIn = (file: string) => {
  const store = openStore(file);
  const found = [store.farm(), store.readings.newest('p1', 'temperature')?.value];
  store.close();
  return found;
};

test('a night after night of copies leaves a week of days and a year of months', () => {
  let names: string[] = [];
  for (let t = Date.UTC(2024, 0, 5); t < Date.UTC(2026, 4, 20); t += DAY) {
    names.push(nameOf(t));
    const gone = new Set(toDrop(names));
    names = names.filter((name) => !gone.has(name));
  }
  expect(names.slice(-7)).toEqual(
    Array.from({ length: 7 }, (_, i) => nameOf(Date.UTC(2026, 4, 13 + i))),
  );
  expect(names.filter((name) => name.endsWith('-01.db'))).toHaveLength(12);
  expect(names).toHaveLength(12 + 7);
});

test('the newest copy never goes, and nothing that is not ours', () => {
  const days = fc.uniqueArray(fc.integer({ min: 0, max: 2000 }), { minLength: 1, maxLength: 60 });
  fc.assert(
    fc.property(days, (offsets) => {
      const names = offsets.map((day) => nameOf(T + day * DAY));
      const gone = toDrop([...names, 'photos.db', 'dewpost.db']);
      expect(gone).not.toContain(names.sort().at(-1));
      expect(gone.every((name) => names.includes(name))).toBe(true);
    }),
  );
});

test('a copy of a store that is in use has what was acknowledged', () => {
  const { file, store } = storeWith('one');
  const to = join(tempFolder(), nameOf(T));
  backUpStore(file, to);
  store.close();
  expect(farmIn(to)).toEqual(['one', 20]);
});

test('a copy that fails leaves the older one as it was, and no half one', () => {
  const { file, store } = storeWith('one');
  store.close();
  const folder = tempFolder();
  const to = join(folder, nameOf(T));
  backUpStore(file, to);
  const before = readFileSync(to);
  truncateSync(file, 9000);
  expect(() => backUpStore(file, to)).toThrow();
  expect(readFileSync(to).equals(before)).toBe(true);
  expect(existsSync(`${to}.part`)).toBe(false);
});

test('only copies and their cut-off halves are cleared away', () => {
  const folder = tempFolder();
  for (let day = 0; day < 20; day++) writeFileSync(join(folder, nameOf(T - day * DAY)), '');
  for (const name of ['photos.db', `${nameOf(T)}.part`, 'notes.txt'])
    writeFileSync(join(folder, name), '');
  dropOld(folder);
  expect(existsSync(join(folder, 'photos.db'))).toBe(true);
  expect(existsSync(join(folder, 'notes.txt'))).toBe(true);
  expect(existsSync(join(folder, `${nameOf(T)}.part`))).toBe(false);
  expect(existsSync(join(folder, nameOf(T)))).toBe(true);
  expect(existsSync(join(folder, nameOf(T - 8 * DAY)))).toBe(false);
  expect(newestBackupAt(folder)).not.toBeNull();
  expect(newestBackupAt(join(folder, 'not-there'))).toBeNull();
});

test('restoring puts the copy in place and keeps what was there, each time anew', () => {
  const { file, store } = storeWith('new');
  store.close();
  const older = storeWith('old');
  older.store.close();
  const copy = join(tempFolder(), nameOf(T));
  backUpStore(older.file, copy);
  expect(restoreStore(copy, file)).toBe(`${file}.before`);
  expect(farmIn(file)).toEqual(['old', 20]);
  expect(farmIn(`${file}.before`)).toEqual(['new', 20]);
  expect(restoreStore(copy, file)).toBe(`${file}.before-2`);
  expect(farmIn(`${file}.before`)).toEqual(['new', 20]);
});

test('a damaged store can be replaced, too, and is kept', () => {
  const { file, store } = storeWith('new');
  store.close();
  const copy = join(tempFolder(), nameOf(T));
  backUpStore(file, copy);
  writeFileSync(file, 'nothing of it is left');
  restoreStore(copy, file);
  expect(farmIn(file)).toEqual(['new', 20]);
  expect(readFileSync(`${file}.before`, 'utf8')).toBe('nothing of it is left');
});

test("a newer store, another program's, or no database at all is not restored", () => {
  const { file, store } = storeWith('mine');
  store.close();
  const folder = tempFolder();
  const newer = join(folder, 'newer.db');
  backUpStore(file, newer);
  const db = new Database(newer);
  db.pragma('user_version = 999');
  db.close();
  const songs = join(folder, 'songs.db');
  const other = new Database(songs);
  other.exec('CREATE TABLE songs (name TEXT)');
  other.close();
  const text = join(folder, 'text.db');
  writeFileSync(text, 'hello');
  expect(() => restoreStore(newer, file)).toThrow(/or older, got version 999/);
  expect(() => restoreStore(songs, file)).toThrow(/another program's database/);
  expect(() => restoreStore(text, file)).toThrow(/^Expected a store in /);
  expect(() => restoreStore(join(folder, 'none.db'), file)).toThrow(/got none/);
  expect(farmIn(file)).toEqual(['mine', 20]);
  expect(existsSync(`${file}.before`)).toBe(false);
});
