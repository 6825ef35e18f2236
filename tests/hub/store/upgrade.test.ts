import { copyFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { openStore } from '../../../hub/store/index.ts';
import { tempFolder } from '../tempStore.ts';

// Stores as the code of their time made them (tests/fixtures/stores/make.mjs): one of each version
// of the store's shape, with readings, tasks, a record, people and a probe's password.

const folder = new URL('../../fixtures/stores/', import.meta.url).pathname;
const fixtures = readdirSync(folder).filter((name) => name.endsWith('.db'));
// Without nights, which a later step has made anew from the readings, and without who was signed in:
// another one keeps sessions by their hash, so that everybody signs in once more.
const TABLES = [
  ...['series', 'readings', 'hours', 'days', 'place_days', 'farm', 'probes'],
  ...['offsets', 'placements', 'refusals', 'tasks', 'decisions', 'alarms', 'forecasts', 'journal'],
  ...['people', 'secrets'],
];

/** Everything in the tables of the first version, in their order. Of a copy: reading makes files. */
function contents(original: string) {
  const file = join(tempFolder(), 'read.db');
  copyFileSync(original, file);
  const db = new Database(file);
  const all = Object.fromEntries(
    TABLES.map((table) => [table, db.prepare(`SELECT * FROM ${table}`).raw().all()]),
  );
  db.close();
  return all;
}

test('there is a store of the first version', () => {
  expect(fixtures).toContain('version1.db');
});

test.for(fixtures)('%s is brought up to date with all that is in it', (name) => {
  const before = contents(join(folder, name));
  const file = join(tempFolder(), 'dewpost.db');
  copyFileSync(join(folder, name), file);
  const store = openStore(file);
  expect(store.readings.newest('cold', 'temperature')?.value).toBe(7.5);
  expect(store.tasks.endedSince(0).some(({ body }) => JSON.parse(body).answer === 'done')).toBe(
    true,
  );
  expect(store.people.claimed()).toBe(true);
  expect(store.probes.get('p1')?.password).toBeTruthy();
  store.close();
  const after = contents(file);
  for (const table of TABLES)
    expect(after[table]?.map((row) => (row as unknown[]).slice(0, width(before, table)))).toEqual(
      before[table],
    );
  const db = new Database(file);
  expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
  db.close();
});
/** Later versions may add columns at the end. */
const width = (all: ReturnType<typeof contents>, table: string) =>
  (all[table]?.[0] as unknown[] | undefined)?.length ?? 0;
