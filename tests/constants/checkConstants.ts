// `npm run check:constants [folder or file …]`: changes each number of the formulas by 2 %, one at
// a time, and runs the tests of its folder. A number that no test notices could be wrong for years.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { packageRoot as root } from '../../hub/main/verbs/package.ts';
import { bundleTests } from './bundleTests.ts';
import { labelOf, readExplanations } from './explanations.ts';
import type { Constant } from './findConstants.ts';
import { tryMutants } from './mutantPool.ts';

const ENOUGH = 0.95; // share noticed, ours
const NOT_ASKED = new Set(['decide']); // its numbers are limits of ours, held by its own tests
const EXPLAINED = 'tests/constants/survivors.md';

const say = (line: string) => process.stdout.write(`${line}\n`);
const progress = (line: string) => {
  if (process.stderr.isTTY) process.stderr.write(`\r\x1b[K${line}`);
};

const folders = readdirSync(join(root, 'rules'), { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && !NOT_ASKED.has(entry.name))
  .map(({ name }) => name);

/** Which folders, and which of their files; a name may be `air`, `rules/air` or a file's path. */
function asked(names: readonly string[]) {
  if (names.length === 0) return folders.map((folder) => ({ folder, only: (_: Constant) => true }));
  return names.map((name) => {
    const path = name.replace(/^\.?\/*(rules\/)?/, '').replace(/\/$/, '');
    const folder = path.split('/')[0] ?? '';
    if (!folders.includes(folder)) {
      process.stderr.write(
        `Expected one of ${folders.join(', ')}, or a file in one, got ${name}\n`,
      );
      process.exit(2);
    }
    const only = ({ file }: Constant) => path === folder || file === `rules/${path}`;
    return { folder, only };
  });
}

const explained = readExplanations(readFileSync(join(root, EXPLAINED), 'utf8'));
const survivors: Constant[] = [];
const caught: Constant[] = [];
const broken: string[] = [];
const leftOut = new Set<string>();
let spent = 0;

for (const { folder, only } of asked(process.argv.slice(2))) {
  try {
    const bundle = await bundleTests(root, folder);
    const indices = [...bundle.constants.keys()].filter((i) =>
      only(bundle.constants[i] as Constant),
    );
    const begin = performance.now();
    let done = 0;
    await tryMutants(
      root,
      bundle,
      indices,
      ({ index, by }) => {
        const constant = bundle.constants[index] as Constant;
        (by === null ? survivors : caught).push(constant);
        done += 1;
        progress(`${folder} ${done}/${indices.length}`);
      },
      (test) => leftOut.add(test),
    );
    const ms = performance.now() - begin;
    spent += ms;
    progress('');
    say(`${folder}: ${indices.length} constants in ${(ms / 1000).toFixed(1)} s`);
  } catch (error) {
    broken.push(`${folder}: ${error instanceof Error ? error.message : error}`);
  }
}

const inOrder = survivors.sort((a, b) => a.file.localeCompare(b.file) || a.line - b.line);
for (const one of inOrder) {
  const reason = explained.get(labelOf(one));
  say(`survived ${one.file}:${one.line} ${one.text} in ${one.within || 'the file'}`);
  say(reason === undefined ? `  - \`${labelOf(one)}\`: why? (${EXPLAINED})` : `  ${reason}`);
}
const alive = new Set(survivors.map(labelOf));
const tried = new Set([...survivors, ...caught].map(({ file }) => file));
for (const label of explained.keys())
  if (tried.has(label.split(' ')[0] ?? '') && !alive.has(label))
    say(`${EXPLAINED} explains \`${label}\`, which is noticed or gone`);
for (const test of leftOut) say(`left out, it fails with nothing changed: ${test}`);
for (const fault of broken) say(`cannot tell: ${fault}`);

const all = survivors.length + caught.length;
const share = all === 0 ? 1 : caught.length / all;
const each = all === 0 ? 0 : spent / all;
say(
  `${all} constants, ${caught.length} caught (${(100 * share).toFixed(1)} %), ${survivors.length} survivors; ${each.toFixed(0)} ms each`,
);
process.exit(broken.length > 0 || share < ENOUGH ? 1 : 0);
