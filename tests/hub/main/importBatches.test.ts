import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import { makeBatches } from '../../../hub/batches/index.ts';
import { formOf } from '../../../hub/main/imports/stationForms.ts';
import { runVerb } from '../../../hub/main/verbs/verbs.ts';
import { openStore } from '../../../hub/store/index.ts';
import { trayFarm } from '../batches/trayFarm.ts';
import { tempFolder } from '../tempStore.ts';

/** Runs a verb as the command does; what it writes is caught. */
async function run(...args: string[]) {
  const said = { out: '', err: '' };
  const spies = (['out', 'err'] as const).map((to) =>
    vi.spyOn(process[`std${to}`], 'write').mockImplementation((text) => {
      said[to] += String(text);
      return true;
    }),
  );
  try {
    return { code: await runVerb(args), ...said };
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
}

function files(csv: string, farmText = trayFarm) {
  const path = tempFolder();
  const [farm, file, data] = ['farm.yaml', 'trays.csv', 'data'].map((name) => join(path, name));
  writeFileSync(farm as string, farmText);
  writeFileSync(file as string, csv);
  const clock = '2026-04-23T11:00:00Z/0/0.0000001';
  const args = ['import', file ?? '', '--data', data ?? '', '--farm', farm ?? '', '--clock', clock];
  const batches = () => {
    const store = openStore(join(data ?? '', 'dewpost.db'));
    const all = makeBatches(store).all();
    store.close();
    return all;
  };
  return { args, batches, file: file ?? '' };
}

test('a file of batches is told from others by its first line, and taken in once', async () => {
  const csv =
    'Crop;Trays;Sown;Place;Cut;Kg\nbasil;12;2026-04-02;Long House;2026-04-22;2,8\nkale;1;2026-04-02;x;;\n';
  const { args, batches, file } = files(csv);
  expect(await formOf(file)).toBe('batches-csv');
  const first = await run(...args);
  expect(first).toEqual({
    code: 0,
    out: '2 entries of 1 batches taken in, 0 rows were there already, 1 rows refused.\n',
    err: 'line 3: Expected one of basil, pea-shoots, chives in crop, got "kale"\n',
  });
  expect(batches()).toMatchObject([{ id: 'basil-0402-1', state: 'ended', cuts: [{ kg: 2.8 }] }]);
  expect((await run(...args)).out).toMatch(/^0 entries of 0 batches taken in, 1 rows were there/);
  expect(batches()).toHaveLength(1);
});

test('a file in which no row can be entered is a failure that says why', async () => {
  const { args } = files('batch,event,at\nb1,cut,2026-04-02\n');
  expect(await run(...args)).toEqual({
    code: 1,
    out: '',
    err: 'line 2: Expected a row sown for b1, got none\nExpected at least one batch, got none\n',
  });
});

test('the examples of the README are taken in as they stand there, by its farm file', async () => {
  const readme = readFileSync(new URL('../../../README.md', import.meta.url), 'utf8');
  const farm = /## The farm file\n\n```yaml\n([\s\S]+?)```/.exec(readme)?.[1] ?? '';
  const examples = [...readme.matchAll(/```csv\n([\s\S]+?)```/g)].map(([, text]) => text ?? '');
  expect(examples).toHaveLength(2);
  for (const csv of examples) {
    const { args, batches } = files(csv, farm);
    const { code, out, err } = await run(...args);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/, 0 rows refused\.\n$/);
    expect(batches().length).toBeGreaterThan(1);
  }
});
