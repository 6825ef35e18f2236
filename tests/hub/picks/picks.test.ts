import { expect, test } from 'vitest';
import type { Pick, PickHistory, PickOffers } from '../../../hub/contract/index.ts';
import { DAY, HOUR, iso, pickHub, T } from './pickFarm.ts';

const soft = (text = '') => text.replaceAll('\u00a0', ' ');

test('place and weight are enough: the crop is the place’s own, the time is now, the rest is not known', async () => {
  const { ask } = await pickHub();
  const { status, body } = await ask('POST', '/api/picks', { place: 'south-patch', kg: 4.5 });
  expect(status, body.error).toBe(200);
  expect(body).toMatchObject({
    ...{ place: 'south-patch', placeName: 'South Patch', crop: 'strawberry', at: iso(T), kg: 4.5 },
    ...{ lostKg: null, minutes: null, walkMinutes: null, pickers: 1, price: null, note: null },
    ...{ state: 'kept', missing: ['lostKg', 'minutes'], entries: 1 },
  });
  expect(soft(body.history[0]?.words)).toBe('Picked, 4.5 kg.');
  expect((await ask<Pick[]>('GET', '/api/picks')).body).toHaveLength(1);
});

test('a picking is corrected and taken back by further entries; none is ever changed', async () => {
  const { ask, store } = await pickHub();
  const { body: first } = await ask('POST', '/api/picks', { place: 'south-patch', kg: 40 });
  const at = `/api/picks/${first.id}`;
  const corrected = await ask('PATCH', at, {
    correct: { kg: 4, lostKg: 0, minutes: 30 },
    why: 'a point too far',
  });
  expect(corrected.body).toMatchObject({ kg: 4, lostKg: 0, missing: [], entries: 2 });
  expect(soft(corrected.body.history[0]?.words)).toBe(
    'Corrected (a point too far): weight to 4 kg, sorted out to 0 kg and minutes to 30.',
  );
  // A correction that was a mistake, and the whole picking.
  const back = await ask('PATCH', at, { undo: corrected.body.history[0]?.entry ?? 0 });
  expect(back.body).toMatchObject({ kg: 40, lostKg: null, entries: 3 });
  const gone = await ask('PATCH', at, { undo: first.entry });
  expect(gone.body.state).toBe('withdrawn');
  expect((await ask<Pick[]>('GET', '/api/picks')).body).toEqual([]);
  expect((await ask<Pick[]>('GET', '/api/picks?state=all')).body).toHaveLength(1);
  expect(store.journal.after('pick', 0)).toHaveLength(4);
  const twice = await ask('PATCH', at, { undo: first.entry });
  expect(twice.status).toBe(409);
});

test.for([
  [{ place: 'cool-room', kg: 1 }, /^Expected one of .*south-patch in place, got "cool-room"/],
  [{ place: 'outside', kg: 1 }, /^Expected a crop in crop/],
  [{ place: 'outside', crop: 'marble', kg: 1 }, /^Expected one of basil.* in crop, got "marble"$/],
  [{ place: 'south-patch', kg: 1, lostKg: 2 }, /^Expected at most the 1 kg picked in lostKg/],
  [{ place: 'south-patch', kg: -1 }, /in kg, got -1$/],
  [{ place: 'south-patch', kg: 1, minutes: 0 }, /in minutes, got 0$/],
  [{ place: 'south-patch', kg: 1, minutes: 9, walkMinutes: 10 }, /9 minutes .* in walkMinutes/],
  [{ place: 'south-patch', kg: 1, at: iso(T + HOUR) }, /^Expected a time that is past in at/],
  [{ place: 'south-patch' }, /in kg, got nothing$/],
  [{ place: 'south-patch', kg: 1, colour: 'red' }, /^Expected no field colour/],
] as const)('what cannot be is refused with its field: %j', async ([body, said]) => {
  const { ask, store } = await pickHub();
  const reply = await ask('POST', '/api/picks', body);
  expect(reply.status).toBe(400);
  expect(reply.body.error).toMatch(said);
  expect(store.journal.after('pick', 0)).toEqual([]);
});

test('a change is one of correct and undo, with something in it', async () => {
  const { ask } = await pickHub();
  const { body } = await ask('POST', '/api/picks', { place: 'south-patch', kg: 1 });
  for (const change of [
    {},
    { correct: {} },
    { correct: { kg: 2 }, undo: 1 },
    { correct: { lostKg: 3 } },
  ])
    expect((await ask('PATCH', `/api/picks/${body.id}`, change)).status).toBe(400);
  expect((await ask('PATCH', '/api/picks/nowhere', { undo: 1 })).status).toBe(404);
});

test('pickings of some days, or of one place', async () => {
  const { ask, pickings } = await pickHub();
  await pickings([
    [9, 3, 30],
    [5, 2, 30],
    [1, 1, 30],
  ]);
  await ask('POST', '/api/picks', { place: 'sun-house', crop: 'pea-shoots', kg: 2 });
  const found = async (query: string) =>
    (await ask<Pick[]>('GET', `/api/picks?${query}`)).body.map(({ kg }) => kg);
  expect(await found('from=2025-10-08&to=2025-10-12')).toEqual([1, 2]);
  expect(await found('place=sun-house')).toEqual([2]);
});

test('the quick entry offers where somebody picked lately, its last weights and minutes', async () => {
  const { ask, pickings } = await pickHub();
  const before = (await ask<PickOffers>('GET', '/api/picks/offers')).body;
  // A patch is offered before anybody has picked there.
  expect(before.spots).toEqual([
    {
      ...{ place: 'south-patch', placeName: 'South Patch', crop: 'strawberry', times: 0 },
      ...{ name: 'Strawberries', weights: [], minutes: [], walkMinutes: null, pickers: 1 },
    },
  ]);
  expect(before.places.map(({ id }) => id)).not.toContain('cool-room');
  const bed = { place: 'sun-house', crop: 'pea-shoots', kg: 2, minutes: 25, pickers: 2 };
  await ask('POST', '/api/picks', { ...bed, walkMinutes: 5, at: iso(T - DAY) });
  await ask('POST', '/api/picks', bed);
  await pickings([[200, 3, 30]]); // last season's weights are still the best guess
  const { spots } = (await ask<PickOffers>('GET', '/api/picks/offers')).body;
  expect(spots.map(({ place, times }) => [place, times])).toEqual([
    ['sun-house', 2],
    ['south-patch', 0],
  ]);
  expect(spots[0]).toMatchObject({ weights: [2], minutes: [25], pickers: 2 });
  expect(spots[1]?.weights).toEqual([3]);
});

test('the file holds what is kept, the oldest first, unknown cells empty', async () => {
  const { app, ask, pickings } = await pickHub();
  await pickings([[1, 2.5, 40]], { note: '=HYPERLINK("x"), wet', pickers: 2 });
  await ask('POST', '/api/picks', { place: 'south-patch', kg: 1, at: iso(T - 2 * DAY) });
  const reply = await app.inject({ url: '/api/picks.csv' });
  expect(reply.headers['content-type']).toMatch(/^text\/csv/);
  expect(reply.body.split('\r\n')).toEqual([
    'picked,place,crop,kg,sorted_out_kg,minutes,walk_minutes,pickers,price,note',
    `${iso(T - 2 * DAY)},south-patch,strawberry,1,,,,1,,`,
    `${iso(T - DAY)},south-patch,strawberry,2.5,0,40,,2,,"'=HYPERLINK(""x""), wet"`,
    '',
  ]);
});

test('a hub that starts again knows every picking', async () => {
  const { ask, store, parts } = await pickHub();
  const { body } = await ask<PickHistory>('POST', '/api/picks', { place: 'south-patch', kg: 4 });
  const { makePicks } = await import('../../../hub/picks/index.ts');
  expect(makePicks(store).all()).toEqual(parts.picks.all());
  expect(makePicks(store).get(body.id)?.kg).toBe(4);
});
