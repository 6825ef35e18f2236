import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { expect, test } from 'vitest';
import { faultsOf } from './faultsOf.ts';

const root = new URL('../..', import.meta.url).pathname;
const folders = ['rules', 'hub', 'dashboard', 'simulators', 'tests'];

const sources = folders.flatMap((folder) =>
  readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => relative(root, join(entry.parentPath, entry.name))),
);

test.for(sources)('%s keeps to its side of the wall', (path) => {
  expect(faultsOf(path, readFileSync(join(root, path), 'utf8'))).toEqual([]);
});

test.for([
  ['rules/air/dewPoint.ts', "import { x } from '../../hub/store/index.ts';"],
  ['rules/air/dewPoint.ts', "import { x } from '../frost/index.ts';"],
  ['rules/frost/nightLow.ts', "import { x } from '../air/dewPoint.ts';"],
  ['rules/air/dewPoint.ts', "import { readFileSync } from 'node:fs';"],
  ['rules/air/dewPoint.ts', 'const now = Date.now();'],
  ['hub/intake/index.ts', "import { openStore } from '../store/index.ts';"],
  ['hub/api/server.ts', "import { makeIntake } from '../intake/index.ts';"],
  ['hub/api/server.ts', "import { openDb } from '../store/open.ts';"],
  ['hub/words/en.ts', "import { task } from '../contract/index.ts';"],
  ['dashboard/state.ts', "import { dewPoint } from '../rules/air/index.ts';"],
  ['simulators/tunnel.ts', "import { dewPoint } from '../rules/air/index.ts';"],
  ['simulators/tunnel.ts', "import type { Store } from '../hub/store/index.ts';"],
  ['hub/store/readings.ts', "import fastify from 'fastify';"],
  ['attic/odd.ts', ''],
  ['hub/main/start.ts', '\n'.repeat(251)],
])('%s is refused with %j', ([path = '', source = '']) => {
  expect(faultsOf(path, source)).not.toEqual([]);
});

test.for([
  ['rules/frost/nightLow.ts', "import { dewPoint } from '../air/index.ts';"],
  ['hub/words/en.ts', "import type { Task } from '../contract/index.ts';"],
  ['hub/main/start.ts', "import { makeIntake } from '../intake/index.ts';"],
])('%s is let through with %j', ([path = '', source = '']) => {
  expect(faultsOf(path, source)).toEqual([]);
});
