// Run at build, after the compiler: writes dist/rules/methods.json, from which the hub answers how
// a number was worked out. The words are those beside the code, so that they cannot drift from it.

import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readMethods } from './readMethods.ts';

// From dist/hub/methods/ up to the package.
const root = fileURLToPath(new URL('../../..', import.meta.url));
const to = join(root, 'dist', 'rules', 'methods.json');
mkdirSync(dirname(to), { recursive: true });
writeFileSync(to, JSON.stringify(readMethods(root)));
