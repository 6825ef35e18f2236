import { existsSync, renameSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { newestBackups } from './backups.ts';
import { type Db, openDb } from './open.ts';
import { openStore } from './openStore.ts';
import { salvage, tablesOf } from './salvage.ts';
import { troubleOf } from './trouble.ts';

/** What was done about a damaged file. */
export type Mended = {
  /** Where the damaged file is now; it is never deleted. */
  readonly aside: string;
  /** Readings that could still be read there. */
  readonly readings: number;
  /** Tables of which something could not be read. */
  readonly damaged: readonly string[];
  /** The backup that what was missing came from; null when there was none, or none was needed. */
  readonly backup: string | null;
};

const HOUR = 3_600_000; // ms

function fillFrom(db: Db, backup: string) {
  db.prepare('ATTACH ? AS kept').run(backup);
  try {
    for (const table of tablesOf(db)) {
      const names = (db.pragma(`kept.table_info("${table}")`) as { name: string }[]).map(
        ({ name }) => `"${name}"`,
      );
      if (names.length === 0) continue;
      const list = names.join(', ');
      db.exec(
        `INSERT OR IGNORE INTO main."${table}" (${list}) SELECT ${list} FROM kept."${table}"`,
      );
    }
  } finally {
    db.exec('DETACH kept');
  }
}

/** Roll-ups that were lost are made again, where all their readings are there. */
const remake = `
  INSERT OR IGNORE INTO series (id, probe, quantity)
    SELECT DISTINCT series_id, 'lost-' || series_id, 'lost' FROM main.readings
    WHERE series_id NOT IN (SELECT id FROM series);
  INSERT OR IGNORE INTO stale_hours SELECT DISTINCT series_id, t / ${HOUR} * ${HOUR}
    FROM main.readings AS r WHERE NOT EXISTS (SELECT 1 FROM hours AS h
      WHERE h.series_id = r.series_id AND h.t = r.t / ${HOUR} * ${HOUR});
  INSERT OR IGNORE INTO stale_hours SELECT series_id, t FROM hours AS h
    WHERE n <= (SELECT count(*) FROM main.readings AS r WHERE r.series_id = h.series_id
      AND r.t >= h.t AND r.t < h.t + ${HOUR} AND flag IS NULL);`;

/**
 * Moves a damaged file aside and makes a new one of all that can be read there, and of the newest
 * good backup where something cannot. It may take minutes with years of readings.
 *
 * @param backups folder of backups, or null.
 * @param stamp for the name of the damaged file.
 */
export function mendFile(path: string, backups: string | null, stamp: string): Mended {
  const folder = dirname(path);
  let aside = join(folder, `dewpost.damaged-${stamp}.db`);
  for (let i = 2; existsSync(aside); i++) aside = join(folder, `dewpost.damaged-${stamp}-${i}.db`);
  renameSync(path, aside);
  for (const rest of ['-wal', '-shm'])
    if (existsSync(`${path}${rest}`)) renameSync(`${path}${rest}`, `${aside}${rest}`);
  const hadLog = existsSync(`${aside}-wal`);
  const part = `${path}.part`;
  for (const rest of ['', '-wal', '-shm']) rmSync(`${part}${rest}`, { force: true });
  const db = openDb(part);
  db.pragma('foreign_keys = OFF');
  let rows: Readonly<Record<string, number>> = {};
  let damaged: readonly string[] = ['all'];
  try {
    const old = new Database(aside, { readonly: true });
    try {
      // Else SQLite reads nothing at all of a file that is shorter than its header says.
      old.unsafeMode(true);
      old.pragma('writable_schema = ON');
      ({ rows, damaged } = salvage(old, db));
    } finally {
      old.close();
    }
  } catch (error) {
    if (troubleOf(error) === null) throw error; // else not one row of it can be read
  }
  // What reading it has left beside it; its own log stays.
  for (const rest of hadLog ? ['-shm'] : ['-wal', '-shm'])
    rmSync(`${aside}${rest}`, { force: true });
  let backup: string | null = null;
  for (const candidate of damaged.length > 0 && backups !== null ? newestBackups(backups) : [])
    try {
      openStore(candidate).close(); // brings an older one up to date; refuses what is not ours
      fillFrom(db, candidate);
      backup = candidate;
      break;
    } catch {} // the next older one
  if (damaged.length > 0) db.exec(remake);
  db.close();
  renameSync(part, path);
  return { aside, readings: rows.readings ?? 0, damaged, backup };
}
