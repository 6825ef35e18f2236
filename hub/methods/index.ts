import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Method } from '../contract/index.ts';

/** Beside the built rules; seen from the built hub, and from its source. */
const PLACES = ['../../rules/methods.json', '../../dist/rules/methods.json'];

export type Methods = {
  /** How one formula or rule works; undefined for a name that nothing in rules/ has. */
  of(name: string): Method | undefined;
};

/**
 * What the build wrote of the formulas.
 * @throws Error when no build has written it
 */
export function loadMethods(places: readonly string[] = PLACES): Methods {
  for (const place of places) {
    const text = readIfThere(fileURLToPath(new URL(place, import.meta.url)));
    if (text === null) continue;
    const byName = new Map((JSON.parse(text) as Method[]).map((method) => [method.name, method]));
    return { of: (name) => byName.get(name) };
  }
  throw new Error('Expected rules/methods.json beside the built rules (npm run build), got none');
}

function readIfThere(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
}
