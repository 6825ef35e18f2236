import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import { makeBatches } from '../../../hub/batches/index.ts';
import type { FarmBegun } from '../../../hub/contract/index.ts';
import { makeFarmDesk } from '../../../hub/main/farm/farmDesk.ts';
import { runVerb } from '../../../hub/main/verbs/verbs.ts';
import { openStore } from '../../../hub/store/index.ts';
import { tempFolder } from '../tempStore.ts';

// What the pages write is a farm file like any other: the commands take it out, check it, take it in.

type Plain = Record<string, unknown>;
const NAMED: Plain = { farm: { name: 'New: garden # 1', money: 'EUR', wage: 15.5 }, places: [] };
const WHERE = { zone: 'Europe/Dublin', lat: 51.9, lon: -8.3 };
const steps: readonly ((farm: Plain) => Plain)[] = [
  () => NAMED,
  (farm) => ({ ...farm, farm: { ...(farm.farm as Plain), ...WHERE } }),
  (farm) => ({
    ...farm,
    places: [
      { id: 'long-house', name: 'Long House', kind: 'tunnel', vents: true, capacity: 48 },
      { id: 'cool-room', name: 'Cool: room', kind: 'cool-room', setPoint: 3, limit: 5 },
    ],
  }),
  (farm) => ({
    ...farm,
    crops: [
      { id: 'basil', name: 'Basil', band: [21, 29], days: [28, 49], disease: ['grey-mould'] },
      { id: 'cress', name: 'Cress', minutes: { sow: 4 } },
    ],
  }),
  (farm) => ({
    ...farm,
    mixes: [
      {
        ...{ id: 'salad', name: 'Salad' },
        parts: [
          { crop: 'basil', share: 0.333 },
          { crop: 'cress', share: 0.667 },
        ],
      },
    ],
    deliveries: [{ day: 'thursday', wants: [{ of: 'salad', kg: 4 }] }],
  }),
  (farm) => ({
    ...farm,
    places: (farm.places as Plain[]).map((place) =>
      place.id === 'long-house' ? { ...place, wet: { at: 92, below: 88 }, crop: 'basil' } : place,
    ),
  }),
];

/** @returns the exit code, and what was said to a person who made a mistake. */
async function said(...args: string[]) {
  let err = '';
  const out = vi.spyOn(process.stdout, 'write').mockImplementation(() => true);
  const wrong = vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
    err += String(text);
    return true;
  });
  try {
    return { code: await runVerb(args), err };
  } finally {
    out.mockRestore();
    wrong.mockRestore();
  }
}

function desk(data: string) {
  const store = openStore(join(data, 'dewpost.db'));
  return { store, farm: makeFarmDesk(store, makeBatches(store)) };
}

test('a farm described on the pages step by step is checked, exported and imported as it is', async () => {
  const [data, other] = [tempFolder(), tempFolder()];
  const file = join(data, 'farm.yaml');
  const here = desk(data);
  for (const [i, step] of steps.entries()) {
    const { version, description } = here.farm.read();
    const done = here.farm.change(version, step((description ?? {}) as Plain), 'Una', 1000 + i);
    expect(done).toMatchObject({ version: expect.stringMatching(/^[0-9a-f]{16}$/) });
  }
  const written = here.farm.read().description as FarmBegun;
  here.store.close();

  expect(await said('farm', 'export', file, '--data', data)).toEqual({ code: 0, err: '' });
  expect(await said('farm', 'check', file)).toEqual({ code: 0, err: '' });
  expect((await said('farm', 'import', file, '--data', other)).code).toBe(0);
  const there = desk(other);
  expect(there.farm.read().description).toEqual(written);
  expect(there.farm.text()).toBe(readFileSync(file, 'utf8'));

  // And what was imported is edited by the pages again, with nothing else touched.
  const { version, description } = there.farm.read();
  const wider = { ...description, farm: { ...description?.farm, wage: 17 } };
  expect(there.farm.preview(wider).changes).toEqual(['Farm: wage per hour 15.5 → 17']);
  there.farm.change(version, wider, 'Una', 5000);
  const [now, before] = [there.farm.text() ?? '', readFileSync(file, 'utf8')];
  expect(now).toBe(before.replace('wage: 15.5', 'wage: 17'));
  there.store.close();
});

test('a farm that is only begun is checked with what is still missing, and its text is whole', async () => {
  const data = tempFolder();
  const file = join(data, 'farm.yaml');
  const here = desk(data);
  here.farm.change('none', NAMED, 'Una', 1000);
  here.store.close();
  expect((await said('farm', 'export', file, '--data', data)).code).toBe(0);
  const { code, err } = await said('farm', 'check', file);
  expect(code).toBe(1);
  for (const field of ['farm.zone', 'farm.lat', 'farm.lon']) expect(err).toContain(field);
});
