import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { steps } from './steps/index.ts';

export type Db = Database.Database;

/** Marks the file as ours: "Dewp" in ASCII. */
const OURS = 0x44_65_77_70;

/** What the inbox holds, in memory and in the shape of its tables, so that reading sees it. */
const fresh = `
  CREATE TEMP TABLE fresh (
    series_id INTEGER NOT NULL, t INTEGER NOT NULL, value REAL NOT NULL, raw REAL, flag TEXT,
    PRIMARY KEY (series_id, t)
  ) WITHOUT ROWID;
  CREATE TEMP TABLE fresh_refusals (
    source TEXT NOT NULL, reason TEXT NOT NULL, hour INTEGER NOT NULL,
    n INTEGER NOT NULL, last TEXT NOT NULL, last_at INTEGER NOT NULL,
    PRIMARY KEY (source, reason, hour)
  ) WITHOUT ROWID;
`;

/** A file that holds something else is left as it is. */
function refuseOthers(db: Db, path: string) {
  let tables: unknown;
  try {
    tables = db.prepare('SELECT count(*) FROM sqlite_master').pluck().get();
  } catch (error) {
    db.close();
    const { code, message } = error as Error & { code?: string };
    const sentence = `Expected a store in ${path}, got another file: ${message}`;
    throw Object.assign(new Error(sentence), { code });
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
  // New files only. A commit copies each page it touches to the log whole, and the log is written
  // to the card in blocks of 4 kB: a small page leaves room for the next commits in the same block.
  // Measured (60 probes a minute, a commit every 2 s): 1.56 kB a reading with pages of 1 kB, 1.80
  // with 2 kB, 2.34 with 4 kB.
  db.pragma('page_size = 1024');
  // New files only, too: lets space that old readings leave go back to the card bit by bit.
  db.pragma('auto_vacuum = INCREMENTAL');
  db.pragma('journal_mode = WAL');
  // The log is brought into the file after 8 MB: pages that change again and again go there once.
  db.pragma('wal_autocheckpoint = 8000');
  db.pragma('journal_size_limit = 16000000');
  // A commit is on the disk before the probe hears "got it": FULL, not NORMAL, because by
  // SQLite's documentation NORMAL may lose the last commits when the power goes.
  db.pragma('synchronous = FULL');
  db.pragma('foreign_keys = ON');
  db.pragma('busy_timeout = 5000');
  db.pragma('cache_size = -8000');
  db.pragma('temp_store = MEMORY');
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
  db.exec(fresh);
  return db;
}
