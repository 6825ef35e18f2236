import { closeSync, existsSync, openSync, readSync, statSync } from 'node:fs';
import { type Mended, mendFile } from './mendFile.ts';
import { openDb } from './open.ts';
import { openStore, type Store } from './openStore.ts';
import { tablesOf } from './salvage.ts';
import { type StandIn, standInFor } from './standIn.ts';
import { troubleOf } from './trouble.ts';

/** Whether the file is shorter than its own header says (sqlite.org/fileformat.html, section 1.3). */
function isCut(path: string): boolean {
  const { size } = statSync(path);
  const log = statSync(`${path}-wal`, { throwIfNoEntry: false })?.size ?? 0;
  if (size === 0 || log > 0) return false; // with a log beside it the header may be ahead of the file
  const head = Buffer.alloc(32);
  const file = openSync(path, 'r');
  readSync(file, head, 0, 32, 0);
  closeSync(file);
  if (!head.toString('latin1').startsWith('SQLite format 3')) return true;
  const page = head.readUInt16BE(16);
  return size < head.readUInt32BE(28) * (page === 1 ? 65_536 : page);
}

/** Reads all that a start reads, so that damage there is met here. @throws Error of SQLite */
function readThrough(path: string) {
  const db = openDb(path);
  try {
    for (const table of tablesOf(db))
      if (!['readings', 'hours', 'days', 'place_days', 'spot_nights', 'journal'].includes(table))
        for (const _ of db.prepare(`SELECT * FROM main."${table}"`).iterate());
  } finally {
    db.close();
  }
}

/** A card that lets nothing be written: better a hub that sees and wakes people than none. */
function instead(path: string, error: unknown): StandIn {
  const found = troubleOf(error) ?? 'failing';
  // A folder that cannot be written is told by SQLite as a file that cannot be opened.
  const standIn = standInFor(path, found === 'gone' ? 'read-only' : found);
  if (standIn) return standIn;
  throw new Error(
    `Expected a folder that can be written for ${path}, got: ${(error as Error).message}`,
  );
}

/** Opens the store of a hub that starts; a damaged file is mended first, whatever it takes. */
export function openOrMend(
  path: string,
  backups: string | null,
  stamp: string,
): { store: Store; mended: Mended | null } {
  if (existsSync(path))
    try {
      if (isCut(path)) throw Object.assign(new Error('cut short'), { code: 'SQLITE_CORRUPT' });
      readThrough(path);
      return { store: openStore(path), mended: null };
    } catch (error) {
      const trouble = troubleOf(error);
      if (trouble === null) throw error;
      if (trouble !== 'damaged')
        return { store: openStore(path, instead(path, error)), mended: null };
      const mended = mendFile(path, backups, stamp);
      return { store: openStore(path), mended };
    }
  return { store: openStore(path), mended: null };
}
