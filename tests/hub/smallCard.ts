import { execFileSync } from 'node:child_process';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { tempFolder } from './tempStore.ts';

const run = (command: string, ...args: string[]) =>
  execFileSync(command, args, { stdio: ['ignore', 'ignore', 'pipe'] });

/** A card of a few megabytes (a tmpfs), gone with the test; null where mounting is not allowed. */
export function smallCard(megabytes: number): string | null {
  const folder = join(tempFolder(), 'card');
  mkdirSync(folder);
  try {
    run('mount', '-t', 'tmpfs', '-o', `size=${megabytes}m`, 'tmpfs', folder);
  } catch {
    return null;
  }
  onTestFinished(() => {
    run('umount', '-l', folder);
  });
  return folder;
}

/** @param how `ro`: it lets nothing be written. */
export const remount = (folder: string, how: 'ro' | 'rw') =>
  run('mount', '-o', `remount,${how}`, folder);

/** Fills a card to the last block. @returns a function that makes room again. */
export function fillUp(folder: string): () => void {
  const file = join(folder, 'other-things');
  const block = Buffer.alloc(4096);
  writeFileSync(file, '');
  try {
    for (;;) writeFileSync(file, block, { flag: 'a' });
  } catch {} // full
  return () => rmSync(file);
}
