import { readdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** Copies that stay: the newest of so many days, and the first of so many months. Ours. */
export const DAYS_KEPT = 7;
export const MONTHS_KEPT = 12;

const NAME = /^dewpost-(\d{4}-\d{2})-\d{2}\.db$/;

/** @param day calendar day of the farm, "2026-04-23". */
export const backupName = (day: string) => `dewpost-${day}.db`;

/** Which of these names may go, so that some days and the first of some months stay. */
export function toDrop(names: readonly string[]): string[] {
  const ours = names.filter((name) => NAME.test(name)).sort();
  const firsts = new Map<string, string>();
  for (const name of ours) {
    const month = NAME.exec(name)?.[1] ?? '';
    if (!firsts.has(month)) firsts.set(month, name);
  }
  const stays = new Set([...ours.slice(-DAYS_KEPT), ...[...firsts.values()].slice(-MONTHS_KEPT)]);
  return ours.filter((name) => !stays.has(name));
}

const namesIn = (folder: string): string[] => {
  try {
    return readdirSync(folder).filter((name) => NAME.test(name));
  } catch {
    return []; // the stick is not there
  }
};

/** Backups in a folder, newest first. */
export const newestBackups = (folder: string): string[] =>
  namesIn(folder)
    .sort()
    .reverse()
    .map((name) => join(folder, name));

/** When the newest backup was finished, ms; null when there is none. */
export function newestBackupAt(folder: string): number | null {
  const [newest] = newestBackups(folder);
  return newest === undefined
    ? null
    : (statSync(newest, { throwIfNoEntry: false })?.mtimeMs ?? null);
}

/** After a good copy: older ones that need not stay go, and what a cut-off copy left. */
export function dropOld(folder: string) {
  for (const name of toDrop(namesIn(folder))) rmSync(join(folder, name), { force: true });
  for (const name of readdirSync(folder))
    if (/^dewpost-\d{4}-\d{2}-\d{2}\.db\.part(-wal|-shm)?$/.test(name))
      rmSync(join(folder, name), { force: true });
}
