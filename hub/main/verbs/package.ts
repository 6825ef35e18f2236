import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of package.json: two or three up, run from source or built. */
function root(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'package.json'))) folder = dirname(folder);
  return folder;
}

export const packageRoot = root();
/** The built dashboard. */
export const pagesFolder = join(packageRoot, 'dist', 'dashboard');
export const version: string = JSON.parse(
  readFileSync(join(packageRoot, 'package.json'), 'utf8'),
).version;
