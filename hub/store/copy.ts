import { copyFileSync, existsSync, renameSync, rmSync } from 'node:fs';
import Database from 'better-sqlite3';
import { openDb } from './open.ts';

/** Whether a file is a store that can be used. @throws Error in one sentence when it is not. */
function check(path: string) {
  const db = openDb(path);
  try {
    const found = db.pragma('integrity_check', { simple: true });
    if (found !== 'ok') throw new Error(`Expected a whole store in ${path}, got: ${String(found)}`);
  } finally {
    db.close();
  }
}

/**
 * A copy of a store that may be in use, checked by opening it.
 *
 * @throws Error when there is no store, or the copy cannot be written or is not whole.
 */
export async function backUpStore(store: string, to: string): Promise<void> {
  if (!existsSync(store)) throw new Error(`Expected a store in ${store}, got none`);
  const db = new Database(store, { readonly: true });
  const part = `${to}.part`;
  try {
    await db.backup(part);
  } finally {
    db.close();
  }
  check(part);
  for (const rest of ['-wal', '-shm']) rmSync(`${part}${rest}`, { force: true });
  renameSync(part, to);
}

/**
 * Puts a backup in the place of the store, which is kept beside it as `….before`. The hub must not
 * run meanwhile.
 *
 * @throws Error when the backup is not a store, or is not whole; nothing is changed then.
 */
export function restoreStore(from: string, store: string): void {
  if (!existsSync(from)) throw new Error(`Expected a backup in ${from}, got none`);
  const part = `${store}.part`;
  copyFileSync(from, part);
  try {
    check(part);
  } catch (error) {
    rmSync(part, { force: true });
    throw error;
  }
  for (const rest of ['-wal', '-shm']) rmSync(`${part}${rest}`, { force: true });
  if (existsSync(store)) {
    check(store); // brings what is still in its log into the file
    renameSync(store, `${store}.before`);
  }
  for (const rest of ['-wal', '-shm']) rmSync(`${store}${rest}`, { force: true });
  renameSync(part, store);
}
