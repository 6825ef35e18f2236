import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { steps } from './steps/index.ts';

export type Db = Database.Database;

/** Marks the file as ours: "Dewp" in ASCII. */
const OURS = 0x44_65_77_70;

/** A file that holds something else is left as it is. */
function refuseOthers(db: Db, path: string) {
  let tables: unknown;
  try {
    tables = db.prepare('SELECT count(*) FROM sqlite_master').pluck().get();
  } catch (error) {
    db.close();
    throw new Error(`Expected a store in ${path}, got another file: ${(error as Error).message}`);
  }
  if (tables === 0 || db.pragma('application_id', { simple: true }) === OURS) return;
  db.close();
  throw new Error(`Expected a store of Dewpost in ${path}, got another program's database`);
}

/**
 * Opens the store, makes it when there is none, and brings an older one up to date.
 *
 * @param path file, or `:memory:`.
 * @throws Error when the file was written by a newer Dewpost, or is not a store.
 */
export function openDb(path: string): Db {
  if (path !== ':memory:') mkdirSync(dirname(path), { recursive: true });
  const db = new Database(path);
  refuseOthers(db, path);
  // New files only. A commit copies each page it touches to the log whole; with half of the usual
  // page it writes about half as much to the card, and the log may grow twice as many pages.
  db.pragma('page_size = 2048');
  db.pragma('journal_mode = WAL');
  db.pragma('wal_autocheckpoint = 4000');
  // A commit is on the disk before the probe hears "got it": FULL, not NORMAL, because by
  // SQLite's documentation NORMAL may lose the last commits when the power goes.
  db.pragma('synchronous = FULL');
  db.pragma('foreign_keys = ON');
  db.pragma('busy_timeout = 5000');
  db.pragma('cache_size = -8000');
  db.pragma(`application_id = ${OURS}`);
  const had = db.pragma('user_version', { simple: true }) as number;
  if (had > steps.length) {
    db.close();
    throw new Error(`Expected a store of version ${steps.length} or older, got version ${had}`);
  }
  for (let version = had; version < steps.length; version++) {
    db.transaction(() => {
      db.exec(steps[version] ?? '');
      db.pragma(`user_version = ${version + 1}`);
    })();
  }
  return db;
}
