import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { openStore, type StoredReading } from '../../../hub/store/index.ts';
import { tempFolder, tempStore } from '../tempStore.ts';

const T = Date.UTC(2026, 4, 10, 9);
const reading = (t: number, value: number, more: Partial<StoredReading> = {}): StoredReading => ({
  probe: 'p1',
  quantity: 'temperature',
  t,
  value,
  raw: null,
  flag: null,
  ...more,
});

test('a reading is stored once; the first to come stays', () => {
  const { store } = tempStore();
  expect(store.readings.add([reading(T, 20), reading(T, 21)])).toBe(1);
  expect(store.readings.add([reading(T, 22)])).toBe(0);
  expect(store.readings.between('p1', 'temperature', 0, T + 1)).toEqual([{ t: T, value: 20 }]);
});

test('a reading without a number is refused, not swallowed', () => {
  const { store } = tempStore();
  expect(() => store.readings.add([reading(T, Number.NaN)])).toThrow(/NOT NULL/);
});

test('doubtful readings are kept but are not among the good ones', () => {
  const { store } = tempStore();
  store.readings.add([reading(T, 85, { flag: 'out-of-range', raw: 84 }), reading(T + 1, 20)]);
  expect(store.readings.between('p1', 'temperature', 0, T + 9)).toEqual([{ t: T + 1, value: 20 }]);
  expect(store.readings.allBetween('p1', 'temperature', 0, T + 9)[0]).toEqual({
    t: T,
    value: 85,
    raw: 84,
    flag: 'out-of-range',
  });
});

test('a transaction that fails leaves nothing of itself behind', () => {
  const { store } = tempStore();
  const half = () =>
    store.transaction(() => {
      store.readings.add([reading(T, 20)]);
      store.probes.heard('p1', 300_000, T);
      store.journal.add({ t: T, who: 'a', what: 'x', place: null, subject: null, body: {} });
      throw new Error('no');
    });
  expect(half).toThrow('no');
  expect(store.readings.newest('p1', 'temperature')).toBeUndefined();
  expect(store.probes.all()).toEqual([]);
  expect(store.journal.between('x', 0, T + 1)).toEqual([]);
  expect(store.rollups.isStale()).toBe(false);
  store.readings.add([reading(T, 20)]);
  expect(store.rollups.isStale()).toBe(true);
  expect(store.readings.newest('p1', 'temperature')?.value).toBe(20);
});

test('the journal can be added to, and neither changed nor cut', () => {
  const { store, path } = tempStore();
  const entry = { t: T, who: 'Ann', what: 'note', place: 'a', subject: null, body: { is: true } };
  store.journal.add(entry);
  const db = new Database(path);
  expect(() => db.exec("UPDATE journal SET who = 'Bob'")).toThrow(/never changed/);
  expect(() => db.exec('DELETE FROM journal')).toThrow(/never cut/);
  db.close();
  expect(store.journal.newestOf('a', 'note')).toEqual(entry);
});

test('the newest entry is the one added last, even with an earlier time', () => {
  const { store } = tempStore();
  const entry = { who: 'Ann', what: 'vents', place: 'a', subject: null };
  store.journal.add({ ...entry, t: T, body: { is: true } });
  store.journal.add({ ...entry, t: T - 1000, body: { is: false } });
  expect(store.journal.newestOf('a', 'vents')?.body).toEqual({ is: false });
});

test('a store of a newer Dewpost is refused in one sentence', () => {
  const path = join(tempFolder(), 'newer.db');
  openStore(path).close();
  const db = new Database(path);
  const version = db.pragma('user_version', { simple: true }) as number;
  db.pragma(`user_version = ${version + 1}`);
  db.close();
  expect(() => openStore(path)).toThrow(
    `Expected a store of version ${version} or older, got version ${version + 1}`,
  );
});

test("another program's database is refused, and nothing is put into it", () => {
  const path = join(tempFolder(), 'other.db');
  const db = new Database(path);
  db.exec('CREATE TABLE songs (name TEXT)');
  expect(() => openStore(path).close()).toThrow(/^Expected /);
  expect(db.prepare('SELECT count(*) AS n FROM sqlite_master').get()).toEqual({ n: 1 });
  db.close();
});

test('what was stored is there after closing and opening again', () => {
  const { store, again } = tempStore();
  store.readings.add([reading(T, 20)]);
  store.putFarm('one');
  store.putFarm('two');
  store.close();
  const next = again();
  expect(next.readings.newest('p1', 'temperature')?.value).toBe(20);
  expect(next.farm()).toBe('two');
  expect(next.size().bytes).toBeGreaterThan(0);
});

test('a probe belongs to a place from a time to a time; moving it keeps its history', () => {
  const { store } = tempStore();
  store.probes.place('p1', 'long-house', 'canopy', 0);
  store.probes.place('p1', 'cool-room', 'air', T);
  store.probes.place('p1', 'cool-room', 'product', T + 1000);
  expect(store.probes.placementsOf('p1')).toEqual([
    { probe: 'p1', place: 'long-house', spot: 'canopy', from: 0, to: T },
    { probe: 'p1', place: 'cool-room', spot: 'air', from: T, to: T + 1000 },
    { probe: 'p1', place: 'cool-room', spot: 'product', from: T + 1000, to: null },
  ]);
});

test('placing again from the same moment corrects the newest placing', () => {
  const { store } = tempStore();
  store.probes.place('p1', 'long-house', 'canopy', 0);
  store.probes.place('p1', 'cool-room', 'air', T);
  store.probes.place('p1', 'outside', 'air', T);
  expect(store.probes.placementsOf('p1').map(({ place, to }) => [place, to])).toEqual([
    ['long-house', T],
    ['outside', null],
  ]);
});

test('when a probe was last heard only moves on', () => {
  const { store } = tempStore();
  store.probes.heard('p1', 300_000, T);
  store.probes.heard('p1', 300_000, T - 5000);
  expect(store.probes.get('p1')).toMatchObject({ heardAt: T, everyMs: 300_000, password: null });
  store.probes.setPassword('p1', 60_000, 'hash');
  expect(store.probes.get('p1')).toMatchObject({ everyMs: 300_000, password: 'hash' });
});

test('corrections are replaced as a whole', () => {
  const { store } = tempStore();
  store.probes.setOffsets('p1', { temperature: 0.1, humidity: -2 });
  store.probes.setOffsets('p1', { humidity: 1 });
  expect(store.probes.offsets('p1')).toEqual({ humidity: 1 });
});

test('refusals are counted by source and reason, with the newest as an example', () => {
  const { store } = tempStore();
  const refuse = (t: number, sentence: string, reason = 'not-json') =>
    store.refusals.add({ source: 'p1', reason, sentence, t });
  refuse(T - 86_400_000, 'old');
  refuse(T + 1, 'first');
  refuse(T + 2, 'second');
  refuse(T + 3, 'other', 'spike');
  expect(store.refusals.since(T)).toEqual([
    { source: 'p1', reason: 'not-json', count: 2, last: 'second', lastAt: T + 2 },
    { source: 'p1', reason: 'spike', count: 1, last: 'other', lastAt: T + 3 },
  ]);
  expect(store.refusals.since(T - 86_400_000)[0]).toMatchObject({ count: 3, last: 'second' });
});

test('two tasks of one key are never open together', () => {
  const { store } = tempStore();
  const row = { key: 'cover:a', state: 'open' as const, body: '{}', openedAt: T, endedAt: null };
  store.tasks.put({ ...row, id: 'a' });
  expect(() => store.tasks.put({ ...row, id: 'b' })).toThrow(/UNIQUE/);
  store.tasks.put({ ...row, id: 'a', state: 'ended', endedAt: T + 1 });
  store.tasks.put({ ...row, id: 'b' });
  expect(store.tasks.open().map(({ id }) => id)).toEqual(['b']);
  expect(store.tasks.endedSince(T).map(({ id }) => id)).toEqual(['a']);
});
