import { expect, test } from 'vitest';
import type { Lot } from '../../../hub/contract/index.ts';
import { type ColdHub, coldHub, HOUR, iso, T } from './coldFarm.ts';

// A part of a lot that goes on in another cool room, and what is taken back or corrected of it.

const put = { crop: 'own', kg: 10, place: 'cool-room' };

/** Ten hours at 3 °C, then 4 kg go into the cellar at 11 °C for ten hours more. */
async function parted() {
  const hub = await coldHub();
  hub.readings('cold', T, T + 20 * HOUR, 3);
  hub.readings('warm', T, T + 20 * HOUR, 11);
  hub.clock.set(T + 20 * HOUR);
  const given = { ...put, storedAt: iso(T), harvestedAt: iso(T), from: 'long-house', price: 7 };
  const { id } = (await hub.ask('POST', '/api/lots', given)).body;
  const moved = await hub.ask('PATCH', `/api/lots/${id}`, {
    take: { how: 'moved', kg: 4, to: 'Cellar', at: iso(T + 10 * HOUR) },
  });
  return { ...hub, id, moved };
}
const oneIn = async ({ lots }: Pick<ColdHub, 'lots'>, place: string): Promise<Lot> => {
  const here = (await lots()).filter((lot) => lot.place === place);
  expect(here).toHaveLength(1);
  return here[0] as Lot;
};

test('a part that goes on in another room is a lot of its own, with the past of the whole', async () => {
  const hub = await parted();
  expect(hub.moved.status, hub.moved.body.error).toBe(200);
  const part = await oneIn(hub, 'cellar');
  expect(hub.moved.body).toMatchObject({
    ...{ place: 'cool-room', kg: 10, kgLeft: 6, partOf: null },
    taken: [{ how: 'moved', kg: 4, into: part.id }],
  });
  expect(part).toMatchObject({
    ...{ crop: 'own', kg: 4, kgLeft: 4, partOf: hub.id, from: 'long-house', price: 7 },
    ...{ harvestedAt: iso(T), storedAt: iso(T) },
  });
  // By hand, as for a whole lot: 10 h x 3^0.3 + 10 h x 3^1.1 = 47.39 h used of 240; what is left at
  // 3^1.1: 2.397 d. What stayed: 20 h x 3^0.3 = 27.81 h; (240 - 27.81) / 3^0.3 / 24 = 6.359 d.
  expect(part.life.days?.least).toBeCloseTo(2.4, 2);
  expect(part.life.unknownHours).toBe(0);
  expect((await oneIn(hub, 'cool-room')).life.days?.least).toBeCloseTo(6.36, 2);
  const history = (await hub.ask('GET', `/api/lots/${part.id}`)).body.history;
  expect(history.map(({ event }) => event)).toEqual(['carried', 'put-away']);
  expect(history[0]?.words).toBe('Carried to Cellar.');
  expect(history[1]?.words).toContain(`a part of ${hub.id}`);
  expect(hub.moved.body.history[0]?.words.replaceAll('\u00a0', ' ')).toBe(
    'Moved away: 4 kg, to Cellar.',
  );
});

test.for(['the whole', 'the part'])('taken back from %s, both are as before', async (side) => {
  const hub = await parted();
  const part = await oneIn(hub, 'cellar');
  const [id, entry] =
    side === 'the whole' ? [hub.id, hub.moved.body.history[0]?.entry] : [part.id, part.entry];
  const { status, body } = await hub.ask('PATCH', `/api/lots/${id}`, { undo: entry });
  expect(status, body.error).toBe(200);
  expect((await hub.lots()).map((lot) => [lot.id, lot.kgLeft])).toEqual([[hub.id, 10]]);
  const last = body.history[0]?.entry;
  const again = await hub.ask('PATCH', `/api/lots/${id}`, { undo: last });
  expect(again.status).toBe(409);
  expect(again.body.error).toMatch(/^Expected .+: move the part again$/);
});

test('a part that something was sold from is not taken back, and nothing changes', async () => {
  const hub = await parted();
  const part = await oneIn(hub, 'cellar');
  await hub.ask('PATCH', `/api/lots/${part.id}`, { take: { how: 'sold', kg: 1 } });
  const before = hub.store.journal.after('lot', 0).length;
  for (const [id, undo] of [
    [hub.id, hub.moved.body.history[0]?.entry],
    [part.id, part.entry],
  ] as const) {
    const { status, body } = await hub.ask('PATCH', `/api/lots/${id}`, { undo });
    expect(status).toBe(409);
    expect(body.error).toMatch(/^Expected a part that nothing was taken from/);
  }
  expect(hub.store.journal.after('lot', 0)).toHaveLength(before);
});

test('all that is left is carried over as the lot it is', async () => {
  const hub = await parted();
  const { body } = await hub.ask('PATCH', `/api/lots/${hub.id}`, {
    take: { how: 'moved', kg: 6, to: 'cellar' },
  });
  expect(body).toMatchObject({ id: hub.id, place: 'cellar', kgLeft: 6 });
  expect(await hub.lots()).toHaveLength(2);
});

test('a part does not leave before the lot came, nor into the room it is in', async () => {
  const hub = await parted();
  const part = await oneIn(hub, 'cellar');
  const move = (take: object) =>
    hub.ask('PATCH', `/api/lots/${part.id}`, { take: { how: 'moved', kg: 1, ...take } });
  expect((await move({ to: 'cellar' })).status).toBe(400);
  expect((await move({ to: 'cool-room', at: iso(T + 5 * HOUR) })).body.error).toMatch(
    /^Expected a time after it came to cellar/,
  );
});

test('carrying a crop into a room that chills it is warned about, and needs a name', async () => {
  const { ask, readings, clock } = await coldHub();
  readings('warm', T, T + 2 * HOUR, 13);
  readings('cold', T, T + 2 * HOUR, 3);
  clock.set(T + 2 * HOUR);
  const { id } = (await ask('POST', '/api/lots', { crop: 'basil', kg: 2, place: 'cellar' })).body;
  const take = { how: 'moved', kg: 1, to: 'cool-room' };
  const refused = await ask('PATCH', `/api/lots/${id}`, { take });
  expect(refused.status).toBe(409);
  expect(refused.body.error).toMatch(/Basil is hurt below 12.°C/);
  const { status } = await ask('PATCH', `/api/lots/${id}`, { take, override: { by: 'Ada' } });
  expect(status).toBe(200);
});

test('everything said of a lot can be corrected, in words people use, and taken back again', async () => {
  const { ask } = await coldHub();
  const { id } = (await ask('POST', '/api/lots', { ...put, storedAt: iso(T) })).body;
  const correct = {
    ...{ crop: 'leaves', kg: 8, from: 'long-house', place: 'cellar', cooled: 'ice', price: 12 },
    ...{ class: 'whole', harvestedAt: iso(T - 2 * HOUR), storedAt: iso(T - HOUR) },
  };
  const { status, body } = await ask('PATCH', `/api/lots/${id}`, { correct });
  expect(status, body.error).toBe(200);
  expect(body).toMatchObject(correct);
  const said = body.history[0]?.words.replaceAll('\u00a0', ' ') ?? '';
  for (const part of [
    'crop Leaves',
    'weight 8 kg',
    'harvested from Long House',
    'room Cellar',
    'cooled with ice',
    'harvested at 10 May, 04:00',
    'class whole produce',
    'price per kg 12',
  ])
    expect(said).toContain(part);
  const undone = await ask('PATCH', `/api/lots/${id}`, { undo: body.history[0]?.entry });
  expect(undone.body).toMatchObject({ ...put, from: null, cooled: null, price: null });
});
