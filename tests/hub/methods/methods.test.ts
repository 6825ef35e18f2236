import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { makeApp } from '../../../hub/api/app.ts';
import { methodRoutes } from '../../../hub/api/routes/methods.ts';
import { sayFault } from '../../../hub/api/sayFault.ts';
import * as contract from '../../../hub/contract/index.ts';
import { loadMethods } from '../../../hub/methods/index.ts';
import { readMethods } from '../../../hub/methods/readMethods.ts';
import { servedHub } from '../smallFarm.ts';

const root = new URL('../../..', import.meta.url).pathname;
const temp = mkdtempSync(join(tmpdir(), 'methods-'));
afterAll(() => rmSync(temp, { recursive: true }));

mkdirSync(join(temp, 'rules', 'soup'), { recursive: true });
writeFileSync(
  join(temp, 'rules', 'soup', 'boil.ts'),
  `import { orUnknown } from '../orUnknown.ts';

// Floating remark, about the file.

const POT = 3; // litres, ours
// Two lines
// about salt.
const SALT = gramsPerCubicMetre(9.5);
const UNUSED = 7;

/**
 * How long soup boils.
 *
 * Its second paragraph
 * on two lines.
 *
 * Source: Kitchen Handbook 1987,
 * table 3.
 * @param water litres
 * @returns minutes
 * @throws RangeError outside 0..9
 */
export const boil = orUnknown(function boil(water: number): number {
  return stir(water) * POT;
});

const stir = (water: number) => water * SALT;

/** Twice as long as boil. */
export function simmer(water: number): number {
  return 2 * boil(water);
}

export function bare(): number {
  return 1;
}
`,
);
const of = (name: string) => readMethods(temp).find((method) => method.name === name);

test('a formula is told in the words of its docstring, apart from its source and its tags', () => {
  expect(of('boil')).toMatchObject({
    folder: 'soup',
    file: join('rules', 'soup', 'boil.ts'),
    line: 23,
    words: ['How long soup boils.', 'Its second paragraph on two lines.'],
    params: [{ name: 'water', words: 'litres' }],
    returns: 'minutes',
    throws: ['RangeError outside 0..9'],
    sources: [{ words: 'Kitchen Handbook 1987, table 3.', of: null }],
  });
});

test('the constants a formula leans on are told with what stands beside them, and no others', () => {
  expect(of('boil')?.constants).toEqual([
    { name: 'POT', value: '3', words: 'litres, ours' },
    { name: 'SALT', value: '9.5', words: 'Two lines about salt.' },
  ]);
});

test('a formula that names no source has that of what it is built on', () => {
  expect(of('simmer')).toMatchObject({
    uses: ['boil'],
    sources: [{ words: 'Kitchen Handbook 1987, table 3.', of: 'boil' }],
  });
  expect(of('boil')?.usedBy).toEqual(['simmer']);
});

test('a function without a docstring is no formula', () => {
  expect(of('bare')).toBeUndefined();
});

test('every formula that a rule names by hand is there, in the form of the contract', () => {
  const methods = readMethods(root);
  expect(methods.length).toBeGreaterThan(100);
  expect(contract.method.array().parse(methods)).toEqual(methods);
  const byName = new Map(methods.map((method) => [method.name, method]));
  const folder = join(root, 'rules', 'decide');
  const named = readdirSync(folder).flatMap((file) =>
    [...readFileSync(join(folder, file), 'utf8').matchAll(/\bby\(\s*'(\w+)'/g)].map(
      ([, name]) => name,
    ),
  );
  expect(named.length).toBeGreaterThan(15);
  for (const name of named) {
    expect(byName.get(name ?? '')?.words, name).not.toHaveLength(0);
    expect(byName.get(name ?? '')?.sources, name).not.toHaveLength(0);
  }
});

// Source: the docstring and the line of rules/frost/worthActing.ts, read by hand.
test('the words are those beside the code', () => {
  const method = readMethods(root).find(({ name }) => name === 'worthActing');
  expect(method?.folder).toBe('frost');
  expect(method?.words[0]).toMatch(/^Whether to act against harm that may come/);
  expect(method?.sources[0]?.words).toMatch(/Murphy 1977/);
});

async function served(load: () => ReturnType<typeof loadMethods>) {
  const app = await makeApp();
  app.setErrorHandler(sayFault(() => {}));
  methodRoutes(app, load);
  return async (url: string) => {
    const reply = await app.inject({ url });
    return { status: reply.statusCode, body: reply.json() };
  };
}

test('the hub gives a formula by its name, and says which name it does not know', async () => {
  const file = join(temp, 'methods.json');
  writeFileSync(file, JSON.stringify(readMethods(temp)));
  const get = await served(() => loadMethods([pathToFileURL(file).href]));
  const { status, body } = await get('/api/methods/boil');
  expect(status).toBe(200);
  expect(contract.method.parse(body)).toEqual(body);
  expect(body).toEqual(of('boil'));
  expect(await get('/api/methods/toast')).toEqual({
    status: 404,
    body: { error: 'Expected the name of a formula, got "toast"' },
  });
});

test('a hub whose build wrote no formulas says so, and looks again', async () => {
  const file = join(temp, 'later.json');
  const get = await served(() => loadMethods([pathToFileURL(file).href]));
  const { status, body } = await get('/api/methods/boil');
  expect([status, body.error]).toEqual([
    503,
    expect.stringMatching(/^Expected rules\/methods\.json/),
  ]);
  writeFileSync(file, JSON.stringify(readMethods(temp)));
  expect((await get('/api/methods/boil')).status).toBe(200);
});

test('the description of the API knows the way to a formula', async () => {
  const { app } = await servedHub();
  const { paths } = (await app.inject({ url: '/api/openapi.json' })).json();
  expect(Object.keys(paths)).toContain('/api/methods/{name}');
});
