import {
  closeSync,
  copyFileSync,
  existsSync,
  fsyncSync,
  openSync,
  renameSync,
  rmSync,
} from 'node:fs';
import Database from 'better-sqlite3';
import { type Db, openDb } from './open.ts';
import { openStore } from './openStore.ts';

/** Tables that only ever grow: a copy that has fewer rows than there were before is not whole. */
const GROW = ['series', 'tasks', 'journal', 'forecasts'] as const;

const countsOf = (db: Db): number[] =>
  GROW.map((table) => db.prepare<[], number>(`SELECT count(*) FROM ${table}`).pluck().get() ?? 0);

/** Whether a file is a store that can be used. @throws Error in one sentence when it is not. */
function check(path: string, least: readonly number[] = []) {
  openStore(path).close(); // brings an older one up to date, and what waits in its place
  const db = openDb(path);
  try {
    const found = db.pragma('integrity_check', { simple: true });
    if (found !== 'ok') throw new Error(`Expected a whole store in ${path}, got: ${String(found)}`);
    countsOf(db).forEach((count, i) => {
      if (count < (least[i] ?? 0))
        throw new Error(`Expected ${least[i]} rows of ${GROW[i]} in ${path}, got ${count}`);
    });
  } finally {
    db.close();
  }
}

const drop = (path: string, rests = ['', '-wal', '-shm']) => {
  for (const rest of rests) rmSync(`${path}${rest}`, { force: true });
};
/** A stick may be pulled out as soon as we say that it is done. */
const toDisk = (path: string) => {
  const file = openSync(path, 'r+');
  fsyncSync(file);
  closeSync(file);
};

/**
 * A copy of a store that may be in use, checked by opening it. Works as long as it takes: use a
 * process of its own where something else must go on.
 *
 * @throws Error when there is no store, or the copy cannot be written or is not whole.
 */
export function backUpStore(store: string, to: string): void {
  if (!existsSync(store)) throw new Error(`Expected a store in ${store}, got none`);
  const part = `${to}.part`;
  drop(part);
  const db = new Database(store, { readonly: true });
  try {
    const before = countsOf(db);
    // One look at everything: a copy page by page would begin again at each commit of the hub.
    db.prepare('VACUUM INTO ?').run(part);
    check(part, before);
  } catch (error) {
    drop(part);
    throw error;
  } finally {
    db.close();
  }
  drop(part, ['-wal', '-shm']);
  toDisk(part);
  renameSync(part, to);
}

/** A name beside the store that nothing has yet. */
function before(store: string): string {
  const name = `${store}.before`;
  if (!existsSync(name)) return name;
  for (let i = 2; ; i++) if (!existsSync(`${name}-${i}`)) return `${name}-${i}`;
}

/**
 * Puts a backup in the place of the store, which is kept beside it as `….before`, damaged or not.
 * The hub should not run meanwhile.
 *
 * @returns where the store that was there is now; null when there was none.
 * @throws Error when the backup is not a store, or is not whole; nothing is changed then.
 */
export function restoreStore(from: string, store: string): string | null {
  if (!existsSync(from)) throw new Error(`Expected a backup in ${from}, got none`);
  const part = `${store}.part`;
  drop(part);
  copyFileSync(from, part);
  try {
    check(part);
  } catch (error) {
    drop(part);
    throw error;
  }
  drop(part, ['-wal', '-shm']);
  toDisk(part);
  let kept: string | null = null;
  if (existsSync(store)) {
    kept = before(store);
    try {
      openDb(store).close(); // brings what is still in its log into the file
    } catch {} // a damaged one is kept as it is, with its log
    renameSync(store, kept);
    for (const rest of ['-wal', '-shm'])
      if (existsSync(`${store}${rest}`)) renameSync(`${store}${rest}`, `${kept}${rest}`);
  }
  renameSync(part, store);
  return kept;
}
