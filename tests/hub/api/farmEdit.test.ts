import { expect, test } from 'vitest';
import {
  type FarmChange,
  type FarmChanged,
  type FarmChoices,
  type FarmDescription,
  type FarmPreview,
  farmFile,
  type Health,
  type StarterCrop,
} from '../../../hub/contract/index.ts';
import { screens } from '../../../hub/words/index.ts';
import { farmText, MINUTE, servedHub } from '../smallFarm.ts';

type Plain = Record<string, unknown>;
type Lists = { places: Plain[]; probes: Plain[] };
const NAMED = { farm: { name: 'New garden', money: 'EUR', wage: 15 }, places: [] };
const WHERE = { zone: 'Europe/Dublin', lat: 51.9, lon: -8.3 };
const SETTLED = {
  farm: { ...NAMED.farm, ...WHERE },
  places: [{ id: 'long-house', name: 'Long House', kind: 'tunnel' }],
};

async function edited(farm = farmText()) {
  const hub = await servedHub({ farm });
  hub.core.look();
  const get = async <Shape>(url: string) => (await hub.app.inject({ url })).json<Shape>();
  const post = (url: string, payload: object) => hub.app.inject({ method: 'POST', url, payload });
  const read = () => get<FarmDescription>('/api/farm/description');
  const preview = async (description: unknown) =>
    (await post('/api/farm/preview', { description })).json<FarmPreview>();
  const put = async (description: unknown, based?: string) =>
    post('/api/farm', { description, based: based ?? (await read()).version });
  /** The farm with something in it changed, as a page sends it. */
  const change = async (edit: (farm: Lists) => unknown) => {
    const { description, version } = await read();
    edit(description as unknown as Lists);
    return put(description, version);
  };
  return { ...hub, get, post, read, preview, put, change };
}

test('a hub without a farm runs, keeps readings, and says that it has none', async () => {
  const { get, read, send, store, clock, app } = await edited('');
  expect(await read()).toEqual({ version: 'none', settled: false, description: null });
  expect(await get<Health>('/api/health')).toMatchObject({ status: 'no-farm', evaluatedAt: null });
  send('p7', 'temperature', clock.now(), 14.2);
  expect(await get('/api/probes')).toMatchObject([{ id: 'p7', place: null }]);
  expect(store.readings.newest('p7', 'temperature')?.value).toBe(14.2);
  const today = await app.inject({ url: '/api/today' });
  expect([today.statusCode, today.json()]).toEqual([
    503,
    {
      error:
        'Expected a farm that is told where it lies, got none yet: a grower describes it under Set-up',
    },
  ]);
});

test('a farm is described step by step, and looked at once it is told where it lies', async () => {
  const { core, get, read, put, faults } = await edited('');
  expect((await put(NAMED)).statusCode).toBe(200);
  expect(await read()).toMatchObject({ settled: false, description: { farm: NAMED.farm } });
  expect(core.lastLook()).toBe(null);
  expect((await get<Health>('/api/health')).status).toBe('no-farm');
  const said = await put(SETTLED);
  expect(said.json<FarmChanged>().changes).toContain('Long House is added: tunnel');
  expect(core.lastLook()).not.toBe(null);
  expect(await get('/api/today')).toMatchObject({ places: [{ id: 'long-house' }] });
  expect((await get<Health>('/api/health')).status).toBe('no-readings');
  expect(core.calendar().zone).toBe('Europe/Dublin');
  expect(faults).toEqual([]);
});

test('a preview tells what would change, or each fault with its field, and changes nothing', async () => {
  const { read, preview, store } = await edited();
  const { description } = await read();
  const places = (description as unknown as Lists).places;
  Object.assign(places[0] ?? {}, { capacity: 60 });
  expect(await preview(description)).toEqual({
    faults: [],
    changes: ['Long House: room for trays not told → 60'],
    lost: [],
  });
  Object.assign(places[0] ?? {}, { capacity: 'sixty' });
  Object.assign(places[3] ?? {}, { limit: 1 });
  expect((await preview(description)).faults).toEqual([
    {
      field: 'places.0.capacity',
      sentence: 'Expected number in places[0].capacity, got "sixty"',
      said: 'Expected a number, got "sixty"',
    },
  ]);
  Object.assign(places[0] ?? {}, { capacity: 60 });
  expect((await preview(description)).faults).toEqual([
    {
      field: 'places.3.limit',
      sentence: 'Expected a temperature above setPoint in places[3].limit, got 1',
      said: 'Expected a temperature above the set temperature, got 1',
    },
  ]);
  expect(store.farm()).toBe(farmText());
});

test('a change is taken, written down with who and when, and seen by the next look', async () => {
  const { change, core, get, clock } = await edited();
  clock.set(clock.now() + MINUTE);
  const reply = await change(({ places: [house] }) => Object.assign(house ?? {}, { name: 'Tall' }));
  expect(reply.json<FarmChanged>().changes).toEqual(['Tall: name Long House → Tall']);
  expect(core.farm().place('long-house')?.name).toBe('Tall');
  const [newest] = await get<FarmChange[]>('/api/farm/changes');
  expect(newest).toMatchObject({
    who: 'grower',
    t: new Date(clock.now()).toISOString(),
    words: ['Tall: name Long House → Tall'],
    undoable: true,
  });
});

test('what is no farm is refused in a sentence, and nothing is kept of it', async () => {
  const { change, store } = await edited();
  const reply = await change((farm) => Object.assign(farm.places[0] ?? {}, { crop: 'hops' }));
  expect([reply.statusCode, reply.json()]).toEqual([
    400,
    { error: 'Expected one of the crops basil in places[0].crop, got "hops"' },
  ]);
  expect(store.farm()).toBe(farmText());
});

test('of two people who change the same farm the second is told, and overwrites nothing', async () => {
  const { read, put, core } = await edited();
  const { version, description } = await read();
  const named = (name: string) => ({
    ...description,
    farm: { ...(description as Record<string, Plain>).farm, name },
  });
  expect((await put(named('First'), version)).statusCode).toBe(200);
  const second = await put(named('Second'), version);
  expect([second.statusCode, second.json()]).toEqual([
    409,
    {
      error:
        'Expected the farm as it stands in based, got an older one: somebody changed it meanwhile, look at it again',
    },
  ]);
  expect(core.farm().file.farm.name).toBe('First');
});

test('undoing puts the description before it back, letter by letter, as one more change', async () => {
  const { change, get, post, read, store } = await edited();
  await change(({ places: [house] }) => Object.assign(house ?? {}, { capacity: 60 }));
  const [made] = await get<FarmChange[]>('/api/farm/changes');
  const undo = async (id: number | undefined) =>
    post(`/api/farm/changes/${id}/undo`, { based: (await read()).version });
  const reply = await undo(made?.id);
  expect(reply.json<FarmChanged>().changes).toEqual(['Long House: room for trays 60 → not told']);
  expect(store.farm()).toBe(farmText());
  const all = await get<FarmChange[]>('/api/farm/changes');
  expect(all.map(({ undoes }) => undoes)).toEqual([made?.id, null, null]);
  const first = await undo(all.at(-1)?.id);
  expect([first.statusCode, first.json()]).toEqual([
    409,
    { error: 'Expected a change with a farm before it, got the first one' },
  ]);
  expect((await undo(999_999)).statusCode).toBe(404);
});

test('a probe moved on its page stays there when something else of the farm is changed', async () => {
  const { change, post, send, clock, core } = await edited();
  send('p1', 'temperature', clock.now(), 20);
  clock.set(clock.now() + MINUTE);
  await post('/api/probes/p1/place', { place: 'outside', spot: 'air' });
  await change(({ places: [house] }) => Object.assign(house ?? {}, { capacity: 60 }));
  expect(core.snapshots.spots.currentOf('p1')?.place).toBe('outside');
  await change(({ probes: [probe] }) => Object.assign(probe ?? {}, { spot: 'air' }));
  expect(core.snapshots.spots.currentOf('p1')).toMatchObject({ place: 'long-house', spot: 'air' });
});

test('a place is not taken out while a probe hangs in it', async () => {
  const { change } = await edited();
  const without = (farm: Lists) => {
    farm.places = farm.places.filter(({ id }) => id !== 'outside');
    farm.probes = farm.probes.filter(({ place }) => place !== 'outside');
  };
  expect((await change(without)).json()).toEqual({
    error: 'Expected no probe in Outside, which would be gone, got mast',
  });
});

test('the text is given as it was written, comments and all', async () => {
  const { app } = await edited(`# ours\n${farmText()}`);
  const { body, headers } = await app.inject({ url: '/api/farm/text' });
  expect(headers['content-type']).toMatch(/^application\/yaml/);
  expect(body).toBe(`# ours\n${farmText()}`);
});

test('a crop is not given up while a batch of it grows', async () => {
  const { change, post } = await edited();
  const sown = { crop: 'basil', place: 'long-house', trays: 4 };
  expect((await post('/api/batches', sown)).statusCode).toBe(200);
  const without = (farm: Lists) => {
    Object.assign(farm, { crops: [], deliveries: [], mixes: [] });
    for (const place of farm.places) delete place.crop;
  };
  expect((await change(without)).json()).toEqual({
    error: 'Expected no batch that grows of basil, which would be gone, got 1',
  });
});

test('a page can offer the names that the rules know, each in the words of a grower', async () => {
  const { get } = await edited();
  const choices = await get<FarmChoices>('/api/farm/choices');
  const { diseases, stages } = screens.setUpFields;
  expect(choices.diseases.filter((id) => diseases[id] === undefined)).toEqual([]);
  const told = Object.values(choices.stages).flat();
  expect(told.filter((id) => stages[id] === undefined)).toEqual([]);
  expect(choices.stages.strawberry).toContain('open-flower');
  expect(choices.keepsLike).toContain('basil');
});

test('every figure a crop begins with says where it comes from, or that it has no source', async () => {
  const { get } = await edited();
  const crops = await get<StarterCrop[]>('/api/starter-crops');
  expect(crops.length).toBeGreaterThan(5);
  for (const { id, band, disease, days, minutes, base, heatLimit } of crops) {
    for (const figure of [base, band, heatLimit, days, minutes])
      expect(figure === undefined || figure.source.length > 10, id).toBe(true);
    expect(farmFile.shape.crops.safeParse([{ id, disease, days: days?.value }]).success).toBe(true);
  }
});

test('shares of a mix that are no whole are told by what they come to', async () => {
  const { read, preview } = await edited();
  const { description } = await read();
  const parts = [
    { crop: 'basil', share: 0.6 },
    { crop: 'basil', share: 0.6 },
  ];
  const { faults } = await preview({ ...description, mixes: [{ id: 'salad', parts }] });
  expect(faults.map(({ field, said }) => [field, said.replaceAll('\u00a0', ' ')])).toEqual([
    ['mixes.0.parts', 'Expected shares that make 100 % together, got 120 %'],
  ]);
});
