import { copyFileSync, existsSync, mkdtempSync, rmSync, statfsSync, statSync } from 'node:fs';
import { freemem, tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Trouble } from './trouble.ts';

/** A store that cannot be opened where it is, because nothing can be written there: a copy of it
 *  elsewhere is read and looked at meanwhile, and nothing is kept. */
export type StandIn = { readonly path: string; readonly trouble: Trouble };

/** Where a copy goes: into memory where there is a folder for that, else among temporary files. */
const PLACES = ['/dev/shm', tmpdir()];

/** @returns null where there is no room for a copy. */
export function standInFor(path: string, trouble: Trouble): StandIn | null {
  const rests = ['', '-wal'].filter((rest) => existsSync(`${path}${rest}`));
  const bytes = rests.reduce((sum, rest) => sum + statSync(`${path}${rest}`).size, 0);
  for (const place of PLACES)
    try {
      const { bavail, bsize } = statfsSync(place);
      // In memory it leaves at least half of what is free to everything else.
      if (bytes * 2 > Math.min(bavail * bsize, place === '/dev/shm' ? freemem() : Infinity))
        continue;
      const copy = join(mkdtempSync(join(place, 'dewpost-')), 'dewpost.db');
      for (const rest of rests) copyFileSync(`${path}${rest}`, `${copy}${rest}`);
      return { path: copy, trouble };
    } catch {} // the next place
  return null;
}

export const dropStandIn = ({ path }: StandIn) =>
  rmSync(dirname(path), { recursive: true, force: true });
