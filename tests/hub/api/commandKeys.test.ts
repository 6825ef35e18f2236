import fc from 'fast-check';
import { expect, test } from 'vitest';
import { openStore } from '../../../hub/store/index.ts';
import { HOUR, servedHub } from '../smallFarm.ts';

// draft-ietf-httpapi-idempotency-key-header, section 2: the same key is the same command; for another
// command 422, for one that is still being worked on 409.

const T = Date.UTC(2026, 4, 10, 9);
const DAY = 24 * HOUR;
const KEY = '8e03978e-40d5-43dd-bc93-6894a57f9324';

async function hubWithLots() {
  let wall = T;
  const hub = await servedHub({ now: T }, { wall: () => wall });
  const send = async (kg: number, key?: string) => {
    const reply = await hub.app.inject({
      method: 'POST',
      url: '/api/lots',
      payload: { crop: 'basil', place: 'cool-room', kg, override: { by: 'Ann' } },
      headers: key === undefined ? {} : { 'idempotency-key': key },
    });
    return { status: reply.statusCode, body: reply.json<{ id: string; error?: string }>() };
  };
  const lots = async () =>
    (await hub.app.inject({ url: '/api/lots' })).json<{ id: string; kg: number }[]>();
  return { ...hub, send, lots, later: (ms: number) => (wall += ms) };
}

test('a command that is sent again under its key gets the same answer and enters nothing', async () => {
  const { send, lots } = await hubWithLots();
  const first = await send(3, `"${KEY}"`);
  expect(first.status).toBe(200);
  expect(await send(3, `"${KEY}"`)).toEqual(first);
  expect(await send(3, KEY)).toEqual(first); // without the quotes it is the same key
  expect(await lots()).toHaveLength(1);
});

test('two commands that look alike are two, each under a key of its own or under none', async () => {
  const { send, lots } = await hubWithLots();
  for (const key of [KEY, `${KEY}-b`, undefined, undefined]) await send(3, key);
  expect(await lots()).toHaveLength(4);
});

test('a key that was given to another command is refused, and nothing is entered', async () => {
  const { send, lots } = await hubWithLots();
  await send(3, KEY);
  expect(await send(4, KEY)).toEqual({
    status: 422,
    body: { error: 'Expected a new Idempotency-Key for another command, got one known' },
  });
  expect(await lots()).toHaveLength(1);
});

test('what was refused may be mended and sent under the same key', async () => {
  const { send, lots } = await hubWithLots();
  expect((await send(-1, KEY)).status).toBe(400);
  expect((await send(3, KEY)).status).toBe(200);
  expect(await lots()).toHaveLength(1);
});

test('a hub that stopped while it entered a command does not enter it again by itself', async () => {
  const { send, lots, store } = await hubWithLots();
  await send(3, KEY);
  store.commandKeys.drop('grower', KEY);
  // As a power cut leaves it: begun, entered, and never answered.
  const { print = '' } = await printOf(send, store);
  store.commandKeys.begin('grower', KEY, print, T);
  const again = await send(3, KEY);
  expect(again.status).toBe(409);
  expect(again.body.error).toMatch(/look whether it is there$/);
  expect(await lots()).toHaveLength(2); // the one above, and that of printOf
  // Who sends it once more has looked and found nothing.
  expect((await send(3, KEY)).status).toBe(200);
});

test('a key is known after a restart, and for thirty days', async () => {
  const { send, lots, store, later } = await hubWithLots();
  const first = await send(3, KEY);
  const again = openStore(store.path);
  expect(again.commandKeys.get('grower', KEY)?.status).toBe(200);
  again.close();
  later(29 * DAY);
  await send(5, `${KEY}-other`);
  expect(await send(3, KEY)).toEqual(first);
  later(2 * DAY);
  await send(5, `${KEY}-third`); // old ones are let go of when a new one comes
  expect(store.commandKeys.get('grower', KEY)).toBeUndefined();
  expect(await lots()).toHaveLength(3);
});

test('a key that is no key is refused', async () => {
  const { send, lots } = await hubWithLots();
  for (const key of ['short', 'x'.repeat(101), 'has a space in the middle', '""'])
    expect(await send(3, key)).toMatchObject({ status: 400 });
  expect(await lots()).toHaveLength(0);
});

test('however often and in whatever order commands are sent again, each is entered once', {
  timeout: 120_000,
}, async () => {
  const order = fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 1, maxLength: 12 });
  await fc.assert(
    fc.asyncProperty(order, async (sent) => {
      const { send, lots } = await hubWithLots();
      for (const one of sent) expect((await send(one + 1, `${KEY}-${one}`)).status).toBe(200);
      expect(await lots()).toHaveLength(new Set(sent).size);
    }),
    { numRuns: 15 },
  );
});

/** What the hub remembers a command of this test by. */
async function printOf(
  send: (kg: number, key: string) => Promise<unknown>,
  store: { commandKeys: { get(who: string, key: string): { print: string } | undefined } },
) {
  await send(3, `${KEY}-print`);
  return store.commandKeys.get('grower', `${KEY}-print`) ?? { print: '' };
}
