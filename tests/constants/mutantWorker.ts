// One thread that runs a folder's tests again and again, each time with one number changed. The
// script is compiled once; a run costs no more than loading the formulas and the tests themselves.

import { createRequire } from 'node:module';
import { basename, join } from 'node:path';
import { Script } from 'node:vm';
import { parentPort, workerData } from 'node:worker_threads';
import fc from 'fast-check';
import { expect } from 'vitest';
import { FILE, NUMBERS } from './bundleTests.ts';
import { collectTests, type Gathered } from './collectTests.ts';
import type { Asked, Given, Said } from './mutantPool.ts';

const { root, code, values, files } = workerData as Given;
const realRequire = createRequire(join(root, 'package.json'));
const script = new Script(
  `(function (require, exports, module, ${NUMBERS}, ${FILE}) {${code}\n})`,
  {
    filename: 'tests-of-a-folder.cjs',
  },
);
// The same draws each time: whether a number is held may not hang on luck.
fc.configureGlobal({ seed: 20 });

function load(numbers: readonly number[]) {
  const collected = collectTests(expect);
  const module = { exports: {} };
  const require = (id: string) => (id === 'vitest' ? collected.module : realRequire(id));
  script.runInThisContext()(require, module.exports, module, numbers, collected.begin);
  return collected;
}

/** Milliseconds of each test with nothing changed, in the order they were gathered. */
const took: number[] = [];

/** Tests that fail with nothing changed can't tell of a change; those in flight elsewhere, for one. */
const leftOut = new Set<number>();

async function unchanged(): Promise<Said> {
  const { gathered, after } = load(values);
  const failed: string[] = [];
  for (const [i, one] of gathered.entries()) {
    const begin = performance.now();
    const fault = await faultOf(one);
    if (fault !== null) {
      leftOut.add(i);
      failed.push(`${one.file}: ${one.name}: ${fault}`);
    }
    took[i] = performance.now() - begin;
  }
  for (const end of after) await end();
  const ms = took.reduce((a, b) => a + b, 0);
  return { ready: true, failed, tests: gathered.length, ms };
}

/** The first line of how a test failed, twice running: a busy machine once is no change noticed. */
async function faultOf(one: Gathered): Promise<string | null> {
  let fault = '';
  for (let time = 0; time < 2; time++) {
    try {
      await one.run();
      return null;
    } catch (error) {
      fault = error instanceof Error ? error.message : String(error);
    }
  }
  return fault.split('\n')[0] ?? '';
}

/** The file named like the formula first, then the quickest: most changes fall at once. */
function order(gathered: readonly Gathered[], index: number): number[] {
  const stem = basename(files[index] ?? '', '.ts').toLowerCase();
  const rank = (i: number) => {
    const one = gathered[i];
    const named = one !== undefined && `${one.file} ${one.name}`.toLowerCase().includes(stem);
    return (took[i] ?? 0) * (named ? 0.1 : 1);
  };
  const before = (i: number) => (gathered[i]?.name === 'before all' ? 0 : 1);
  return gathered.map((_, i) => i).sort((a, b) => before(a) - before(b) || rank(a) - rank(b));
}

async function changed(index: number): Promise<Said> {
  const begin = performance.now();
  const numbers = values.map((value, i) => (i === index ? value * 1.02 : value));
  const said = (by: string | null): Said => ({
    ready: false,
    index,
    by,
    ms: performance.now() - begin,
  });
  let collected: ReturnType<typeof load>;
  try {
    collected = load(numbers);
  } catch {
    return said('loading it');
  }
  const { gathered, after } = collected;
  try {
    for (const i of order(gathered, index)) {
      const one = gathered[i];
      if (one === undefined || leftOut.has(i)) continue;
      if ((await faultOf(one)) !== null) return said(one.name);
    }
    return said(null);
  } finally {
    for (const end of after) await end();
  }
}

parentPort?.on('message', async (asked: Asked) => {
  parentPort?.postMessage(await changed(asked.index));
});
parentPort?.postMessage(await unchanged());
