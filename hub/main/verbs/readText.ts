import { readFileSync } from 'node:fs';
import { shown } from '../../words/index.ts';

/** A text file somebody named. @throws Error that names it when it cannot be read. */
export function readText(name: string): string {
  try {
    return readFileSync(name, 'utf8');
  } catch (error) {
    throw unreadable(name, error);
  }
}

export const unreadable = (name: string, error: unknown) =>
  new Error(`Expected a file that can be read, got ${shown(name)}: ${(error as Error).message}`);
