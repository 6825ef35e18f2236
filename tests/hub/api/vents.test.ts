import { expect, test } from 'vitest';
import type { PlaceNow } from '../../../hub/contract/index.ts';
import { farmText, HOUR, servedHub } from '../smallFarm.ts';

const T = Date.UTC(2026, 4, 10, 9); // ten o'clock in Dublin
const iso = (t: number) => new Date(t).toISOString();
const usual = farmText().replace(
  'vents: true',
  "vents: true, airing: { opens: '08:30', shuts: '19:00' }",
);

async function house(farm = farmText()) {
  const hub = await servedHub({ now: T, farm });
  hub.core.look();
  const post = async (url: string, payload: object = {}) => {
    const reply = await hub.app.inject({ method: 'POST', url, payload });
    return { status: reply.statusCode, body: reply.json() as PlaceNow & { message: string } };
  };
  const vents = async () => {
    hub.core.look();
    return ((await hub.app.inject({ url: '/api/places/long-house' })).json() as PlaceNow).vents;
  };
  return { ...hub, post, vents };
}
const URL = '/api/places/long-house/vents';

test('what nobody said of vents is not known; what somebody says is, for a day', async () => {
  const { post, vents, clock } = await house();
  expect(await vents()).toEqual({
    ...{ state: null, by: null, since: null, staysOpen: false, mayUndo: false },
  });
  const { status, body } = await post(URL, { state: 'open' });
  expect(status).toBe(200);
  expect(body).toMatchObject({ opened: true, vents: { state: 'open', by: 'said', mayUndo: true } });
  clock.set(T + 23 * HOUR);
  expect((await vents())?.state).toBe('open');
  clock.set(T + 25 * HOUR);
  expect((await vents())?.state).toBeNull();
});

test('an entry is taken back by a further one, and what was said before it stands again', async () => {
  const { post, vents, store, clock } = await house();
  await post(URL, { state: 'open', at: iso(T - 2 * HOUR) });
  clock.set(T + HOUR);
  await post(URL, { state: 'shut' });
  expect((await vents())?.state).toBe('shut');
  await post(`${URL}/undo`);
  expect(await vents()).toMatchObject({ state: 'open', since: iso(T - 2 * HOUR) });
  await post(`${URL}/undo`);
  expect((await vents())?.state).toBeNull();
  expect((await post(`${URL}/undo`)).status).toBe(409);
  expect(store.journal.between('vents', 0, T * 2)).toHaveLength(4); // nothing is ever removed
});

test('usual hours of the farm file speak until somebody says otherwise', async () => {
  const { post, vents, clock } = await house(usual);
  expect(await vents()).toMatchObject({ state: 'open', by: 'usual' });
  await post(URL, { state: 'shut' });
  expect(await vents()).toMatchObject({ state: 'shut', by: 'said' });
  clock.set(T + 10 * HOUR); // 20:00 there
  expect(await vents()).toMatchObject({ state: 'shut', by: 'usual' });
  clock.set(T + 23 * HOUR);
  expect(await vents()).toMatchObject({ state: 'open', by: 'usual' });
});

test('a house that somebody leaves open tonight is not taken for shut at its usual hour', async () => {
  const { store, vents, clock } = await house(usual);
  const said = { who: 'Ann', what: 'vents', place: 'long-house', subject: null };
  store.journal.add({ ...said, t: T + 7 * HOUR, body: { is: true, overnight: true } });
  clock.set(T + 12 * HOUR);
  expect(await vents()).toMatchObject({ state: 'open', by: 'said', staysOpen: true });
});

test.for([
  [{ state: 'ajar' }, 400, 'state'],
  [{ state: 'open', at: iso(T + HOUR) }, 400, 'in at, got'],
  [{ state: 'open', at: iso(T - 30 * HOUR) }, 400, 'in at, got'],
] as const)('%j is refused in one sentence', async ([payload, status, words]) => {
  const { post } = await house();
  const reply = await post(URL, payload);
  expect(reply.status).toBe(status);
  expect(JSON.stringify(reply.body)).toContain(words);
});

test('a place without vents has none to tell of', async () => {
  const { post } = await house();
  expect((await post('/api/places/outside/vents', { state: 'open' })).status).toBe(404);
});
