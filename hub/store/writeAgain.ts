import { mkdirSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Db } from './open.ts';

/** Pages copied between two turns of everything else; ours: some ms. */
const AT_ONCE = 2000;

/**
 * A file that was deleted while it was open is whole as long as it stays open: it is copied out and
 * put back in its place. The database is closed then.
 *
 * @throws Error when the place cannot be written either.
 */
export async function writeAgain(db: Db, path: string): Promise<void> {
  mkdirSync(dirname(path), { recursive: true });
  const part = `${path}.part`;
  rmSync(part, { force: true });
  await db.backup(part, { progress: () => AT_ONCE });
  db.close(); // before the new file is there: closing takes the log of that name away
  for (const rest of ['-wal', '-shm']) rmSync(`${path}${rest}`, { force: true });
  renameSync(part, path);
}
