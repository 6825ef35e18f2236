import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { LossOffers, LossStrips } from '../../../hub/contract/index.ts';
import { HOUR } from '../smallFarm.ts';
import { DAY, lossHub, picture, T } from './lossHub.ts';

const soft = (text: string) => text.replaceAll('\u00a0', ' ');

test('a loss is entered with three facts, and counts with its share, weight and money', async () => {
  const { enter, losses, store } = await lossHub();
  const { status, body } = await enter({ of: { amount: 20, unit: 'trays' } });
  expect(status, body.error).toBe(200);
  // By hand: 4 of 20 trays; 0.5 kg a tray; 30 a kg.
  expect(body).toMatchObject({
    ...{ id: 'loss-basil-0515-1', day: '2026-05-15', share: 0.2, kg: 2, money: 60 },
    ...{ state: 'holds', origin: 'entered', photo: null, placeName: 'Long House', by: 'grower' },
  });
  expect(soft(body.words)).toBe('4 trays of 20 trays Basil, grey mould');
  expect((await losses()).map(({ id }) => id)).toEqual([body.id]);
  expect(store.journal.after('loss', 0)).toHaveLength(1);
});

test('what is not known stays unknown: a weight without a whole has no share', async () => {
  const { enter } = await lossHub();
  expect((await enter({ amount: 2, unit: 'kg' })).body).toMatchObject({
    share: null,
    kg: 2,
    money: 60,
  });
  expect((await enter({ amount: 25, unit: 'share' })).body).toMatchObject({
    ...{ share: 0.25, kg: null, money: null },
  });
  const mixed = { amount: 3, unit: 'kg', of: { amount: 20, unit: 'trays' } };
  expect((await enter(mixed)).body).toMatchObject({ share: 0.3, kg: 3 }); // 20 trays are 10 kg
});

test('a correction, its undo and the undo of all are further entries; the first stays as it was', async () => {
  const { enter, ask, losses, store, clock } = await lossHub();
  const { body: loss } = await enter({});
  const change = (change: object) => ask('PATCH', `/api/losses/${loss.id}`, change);
  clock.set(T + HOUR);
  const corrected = await change({ correct: { amount: 5, look: 'wilted' }, why: 'counted again' });
  expect(corrected.body).toMatchObject({ amount: 5, look: 'wilted', entries: 2 });
  expect(corrected.body.history.map(({ words }) => soft(words))).toEqual([
    'Corrected (counted again): how much 5 trays and what it looked like wilted.',
    'Entered: 4 trays Basil, grey mould.',
  ]);
  const entry = corrected.body.history[0]?.entry;
  expect((await change({ undo: entry })).body).toMatchObject({ amount: 4, look: 'grey-mould' });
  expect((await change({ undo: entry })).status).toBe(409);
  const back = await change({ undo: loss.entry });
  expect(back.body).toMatchObject({ state: 'withdrawn', entries: 4 });
  expect((await losses()).map(({ state }) => state)).toEqual(['withdrawn']);
  const [first] = store.journal.after('loss', 0);
  expect(first?.body).toMatchObject({ event: 'entered', facts: { amount: 4, look: 'grey-mould' } });
});

test('a hub that starts again knows every loss, and quiet weeks too', async () => {
  const { enter, ask, store } = await lossHub();
  await enter({ note: 'north bench' });
  await ask('POST', '/api/losses/quiet-weeks', { week: '2026-05-04', place: 'south-patch' });
  const kept = [store.journal.after('loss', 0), store.journal.after('no-loss', 0)].flat();
  const again = await lossHub();
  for (const { id: _, ...entry } of kept) again.store.journal.add(entry);
  expect((await again.losses())[0]).toMatchObject({ amount: 4, note: 'north bench' });
  expect(again.core.losses.quiet.holds('south-patch', '2026-05-04')).toBe(true);
});

test.for([
  [{ place: 'attic' }, /^Expected one of long-house, .+ in place, got "attic"/],
  [{ crop: 'gold' }, /^Expected one of basil, .+ in crop, got "gold"/],
  [{ amount: 120, unit: 'share' }, /^Expected at most 100 % in amount, got 120/],
  [
    { amount: 30, of: { amount: 20, unit: 'trays' } },
    /at most the 20 trays of of in amount, got 30/,
  ],
  [{ day: '2026-05-16' }, /^Expected today \(2026-05-15\) or before in day, got 2026-05-16/],
  [{ day: '2020-01-01' }, /^Expected a day of the last 800 in day/],
  [{ look: 'plague' }, /in look, got "plague"/],
  [{ amount: 0 }, /in amount, got 0/],
  [{ photo: `${'a'.repeat(64)}.jpg` }, /^Expected a photo that was sent in photo/],
  [{ photo: '../../etc/passwd' }, /^Expected the name of a photo that was sent in photo/],
  [{ colour: 'red' }, /^Expected no field colour/],
] as const)('%j is refused in one sentence', async ([said, sentence]) => {
  const { enter, losses } = await lossHub();
  const { status, body } = await enter(said);
  expect(status).toBe(400);
  expect(body.error).toMatch(sentence);
  expect(await losses()).toEqual([]);
});

test('what was thrown out of a lot is a loss of the cool room, shown once and not counted twice', async () => {
  const { ask, enter, losses, core } = await lossHub();
  const { body: lot } = await ask<{ id: string }>('POST', '/api/lots', {
    ...{ crop: 'leaves', kg: 8, place: 'cool-room' },
  });
  // Entered by hand first, then thrown out of the lot: the lot tells it.
  const early = await enter({ place: 'cool-room', crop: 'leaves', amount: 2, unit: 'kg' });
  expect(early.body.state).toBe('holds');
  const thrown = await ask('PATCH', `/api/lots/${lot.id}`, {
    take: { how: 'thrown-out', kg: 2, by: 'Ada' },
  });
  expect(thrown.status).toBe(200);
  const shown = await losses();
  expect(shown.map(({ origin, state, kg }) => [origin, state, kg]).sort()).toEqual([
    ['entered', 'same', 2],
    ['lot', 'holds', 2],
  ]);
  expect(shown.find(({ origin }) => origin === 'lot')).toMatchObject({ lot: lot.id, share: 0.25 });
  expect(core.losses.counted()).toEqual([]);
  // A further one is asked about, and stored when it is said to be another.
  const again = { place: 'cool-room', crop: 'leaves', amount: 1, unit: 'kg' };
  const asked = await enter(again);
  expect(asked.status).toBe(409);
  expect(soft(asked.body.error ?? '')).toContain(
    '2.0 kg Leaves were thrown out of a lot in the cool room on 2026-05-15',
  );
  expect((await enter({ ...again, another: true })).body.state).toBe('holds');
  expect(core.losses.counted()).toHaveLength(1);
});

test('the quick entry offers what stands there first', async () => {
  const { ask, enter } = await lossHub();
  await enter({ crop: 'leaves' });
  const { body } = await ask<LossOffers>('GET', '/api/losses/offers');
  const long = body.places.find(({ place }) => place === 'long-house');
  expect(long).toMatchObject({ trays: 20, kind: 'tunnel' });
  expect(long?.crops.map(({ crop, standing }) => [crop, standing])).toEqual([
    ['basil', true],
    ['leaves', false],
    ['strawberry', false],
  ]);
  expect(body.places.map(({ place }) => place)).not.toContain('outside');
});

test('a week is said to have had no losses, where there were none, from its Friday on', async () => {
  const { ask, enter, clock } = await lossHub();
  const say = (said: object) => ask<LossOffers>('POST', '/api/losses/quiet-weeks', said);
  await enter({});
  const { body } = await say({ week: '2026-05-11' });
  expect(body.quiet.places).toEqual([
    { place: 'sun-house', name: 'Sun House', said: true },
    { place: 'south-patch', name: 'South patch', said: true },
  ]);
  expect((await say({ week: '2026-05-11', place: 'long-house' })).body.error).toBe(
    'Expected a week without a loss in long-house, got 1',
  );
  expect((await say({ week: '2026-05-12' })).body.error).toMatch(
    /^Expected a Monday \(2026-05-11\)/,
  );
  expect((await say({ week: '2026-05-18' })).body.error).toMatch(/over or nearly \(2026-05-11/);
  expect((await say({ week: '2026-05-11', place: 'cool-room' })).status).toBe(400);
  const back = await say({ week: '2026-05-11', place: 'sun-house', holds: false });
  expect(back.body.quiet.places.find(({ place }) => place === 'sun-house')?.said).toBe(false);
  clock.set(T - DAY); // Thursday
  expect((await ask<LossOffers>('GET', '/api/losses/offers')).body.quiet.week).toBe('2026-05-04');
});

test('strips tell wet, hot and cold hours of each day, gaps as gaps, and pin what was lost', async () => {
  const { air, ask, enter } = await lossHub();
  const monday = Date.UTC(2026, 4, 11);
  // Tuesday: 24 wet hours at 15 °C; Wednesday: two hours at 35 °C; Thursday: nothing is read.
  air('leaf', monday, monday + 3 * DAY, (t) =>
    t >= monday + DAY && t < monday + 2 * DAY
      ? [15, 99]
      : t >= monday + 2 * DAY + 12 * HOUR && t < monday + 2 * DAY + 14 * HOUR
        ? [35, 50]
        : [20, 60],
  );
  await enter({ day: '2026-05-13' });
  const { body } = await ask<LossStrips>('GET', '/api/losses/strips?weeks=2');
  expect([body.from, body.to]).toEqual(['2026-05-04', '2026-05-15']);
  const strip = body.places.find(({ place }) => place === 'long-house');
  expect(strip).toMatchObject({ hotAbove: 32, coldBelow: 11 });
  const day = (name: string) => strip?.days.find((one) => one.day === name);
  expect(day('2026-05-12')?.wetHours).toBe(24);
  expect(day('2026-05-13')).toMatchObject({ hotHours: 2, coldHours: 0 });
  expect(day('2026-05-14')).toMatchObject({ wetHours: null, hotHours: null, unknownHours: 24 });
  expect(strip?.pins.map(({ day, words }) => [day, soft(words)])).toEqual([
    ['2026-05-13', '4 trays Basil, grey mould'],
  ]);
  expect(soft(strip?.words ?? '')).toMatch(
    /^Long House, 12 days: 2\d h wet, 2 h too hot, 0 h too cold/,
  );
});

test('the file of losses keeps formulas harmless and unknowns empty', async () => {
  const { enter, app } = await lossHub();
  await enter({ amount: 2, unit: 'kg', note: '=1+1, "so"' });
  const reply = await app.inject('/api/losses.csv');
  expect(reply.headers['content-type']).toBe('text/csv; charset=utf-8');
  const [head, row] = reply.body.split('\r\n');
  expect(head).toBe(
    'day,place,crop,amount,unit,of_amount,of_unit,share_0_to_1,kg,money,what_it_looked_like,batch,lot,state,by,entered_at,note,photo',
  );
  expect(row).toBe(
    `2026-05-15,Long House,Basil,2,kg,,,,2,60,grey-mould,,,holds,grower,2026-05-15T12:00:00.000Z,"'=1+1, ""so""",`,
  );
});

test('a photo is kept under its hash, served as nothing but a picture, and gone when withdrawn', async () => {
  const { send, enter, ask, app, folder } = await lossHub();
  const sent = await send(picture('png'), 'image/png');
  expect(sent.statusCode, sent.body).toBe(200);
  const { photo } = sent.json<{ photo: string }>();
  const [a, b] = [(await enter({ photo })).body, (await enter({ photo })).body];
  expect(a.photo).toBe(`/api/photos/${photo}`);
  const got = await app.inject(a.photo ?? '');
  expect(got.rawPayload.equals(picture('png'))).toBe(true);
  expect(got.headers).toMatchObject({
    'content-type': 'image/png',
    'x-content-type-options': 'nosniff',
    'content-security-policy': "default-src 'none'; sandbox",
    'cache-control': 'private, no-cache',
  });
  const tag = String(got.headers.etag);
  const unchanged = await app.inject({ url: a.photo ?? '', headers: { 'if-none-match': tag } });
  expect(unchanged.statusCode).toBe(304);
  // Two losses have it: it stays until the second lets it go, and cannot be brought back.
  const withdraw = (id: string) => ask('PATCH', `/api/losses/${id}`, { photo: null });
  expect((await withdraw(a.id)).body.photo).toBeNull();
  expect(existsSync(join(folder, photo))).toBe(true);
  const { body } = await withdraw(b.id);
  expect(readdirSync(folder)).toEqual([]);
  expect((await app.inject(a.photo ?? '')).statusCode).toBe(404);
  expect(body.history[0]).toMatchObject({ event: 'photo', mayUndo: false });
  const undo = await ask('PATCH', `/api/losses/${b.id}`, { undo: body.history[0]?.entry });
  expect(undo.status).toBe(409);
  expect((await withdraw(b.id)).status).toBe(409);
});

test('a photo can come later; only one at a time; taking the adding back deletes it', async () => {
  const { send, enter, ask, folder } = await lossHub();
  const { body: loss } = await enter({});
  const { photo } = (await send(picture('jpg'))).json<{ photo: string }>();
  const change = (change: object) => ask('PATCH', `/api/losses/${loss.id}`, change);
  const added = await change({ photo });
  expect(added.body.photo).toContain(photo);
  expect((await change({ photo })).status).toBe(409);
  await change({ undo: added.body.history[0]?.entry });
  expect(readdirSync(folder)).toEqual([]);
});
