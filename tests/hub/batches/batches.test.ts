import { expect, test } from 'vitest';
import * as own from '../../../hub/batches/index.ts';
import type { BatchOffers } from '../../../hub/contract/index.ts';
import * as contract from '../../../hub/contract/index.ts';
import { picture } from '../losses/lossHub.ts';
import { DAY, HOUR, iso, T, trayHub } from './trayFarm.ts';

const soft = (text: string) => text.replaceAll('\u00a0', ' ');

test('the words a batch is kept by are those that its commands know', () => {
  expect(contract.batchLook.options).toEqual([...own.batchLooks]);
  expect(contract.batchWork.options).toEqual([...own.batchWorks]);
  expect(contract.cutStage.options).toEqual([...own.cutStages]);
});

test('a batch is sown, moved, cut and told in words, and each is an entry of its own', async () => {
  const { sow, change, list, store, ok, app, photos } = await trayHub();
  const sown = await sow({ seedCost: 4, minutes: 20, variety: 'Genovese' });
  expect(sown).toMatchObject({
    ...{ id: 'basil-0402-1', name: 'Basil', state: 'growing', traysLeft: 12, days: 21 },
    ...{ place: 'long-house', placeName: 'Long House', seedCost: 4, otherCost: null },
    works: [{ work: 'sowing', minutes: 20 }],
  });
  expect((await change(sown.id, { move: { place: 'sun-house', minutes: 5 } })).status).toBe(200);
  const photo = photos.put(picture('jpg'));
  const seen = { look: 'mould', note: 'two corners' };
  const never = `${'0'.repeat(64)}.jpg`;
  expect((await change(sown.id, { note: { ...seen, photo: never } })).body.error).toContain(
    'Expected a photo that was sent in photo, got',
  );
  const noted = (await change(sown.id, { note: { ...seen, photo } })).body.notes[0]?.photo;
  expect(noted).toBe(`/api/photos/${photo}`);
  expect((await app.inject(noted ?? '')).statusCode).toBe(200);
  expect((await change(sown.id, { throwOut: { trays: 2, look: 'mould' } })).status).toBe(200);
  const cut = (await change(sown.id, { cut: { kg: 2.1, trays: 6, minutes: 25, lostKg: 0.1 } }))
    .body;
  expect(cut).toMatchObject({ place: 'sun-house', traysLeft: 4, state: 'growing' });
  expect(cut.cuts).toMatchObject([
    { kg: 2.1, trays: 6, stage: 'later', clears: true, minutes: 25 },
  ]);
  expect(cut.readyAt).toEqual({ young: null, later: iso(T) });
  expect(soft(cut.words)).toBe('4 of 12 trays left, 2.1 kg cut. Last seen: mould, just now.');
  expect(cut.history.map(({ words }) => soft(words))).toEqual([
    'Cut 2.1 kg from 6 trays, the later cut, 25 min, 0.1 kg of it not sold (Thu 23 Apr 12:00).',
    'Thrown out 2 trays: mould (Thu 23 Apr 12:00).',
    'Seen: mould, with a photo (Thu 23 Apr 12:00): two corners.',
    'Moved to Sun House, 5 min (Thu 23 Apr 12:00).',
    'Sowing, 20 min (Thu 2 Apr 12:00).',
    'Sown in 12 trays, Long House (Thu 2 Apr 12:00).',
  ]);
  expect((await change(sown.id, { cut: { kg: 1.4 } })).body).toMatchObject({
    ...{ state: 'ended', traysLeft: 0, endedAt: iso(T) },
    cuts: [{ trays: 6 }, { trays: 4 }],
  });
  expect(await list()).toEqual([]);
  expect((await list('?state=ended')).map(({ id }) => id)).toEqual([sown.id]);
  expect(await list('?state=all&crop=pea-shoots')).toEqual([]);
  expect((await list('?state=all&place=sun-house')).length).toBe(1);
  expect(store.journal.after('batch', 0)).toHaveLength(7);
  expect((await ok('GET', `/api/batches/${sown.id}`)).entries).toBe(7);
});

test('some of the trays carried off are a batch of their own, with the past and the share they had', async () => {
  const { sow, change, list } = await trayHub();
  const { id } = await sow({ seedCost: 6, otherCost: 3 });
  await change(id, { move: { place: 'outside', at: iso(T - 10 * DAY) } });
  const { body } = await change(id, {
    move: { place: 'sun-house', trays: 4, at: iso(T - 5 * DAY), minutes: 8 },
  });
  expect(body).toMatchObject({ traysLeft: 8, made: 'basil-0402-2', place: 'outside' });
  expect(body).toMatchObject({ seedCost: 4, otherCost: 2, parted: [{ trays: 4 }] });
  const [first, part] = await list();
  expect([first?.traysLeft, part?.traysLeft]).toEqual([8, 4]);
  expect(part).toMatchObject({
    ...{ partOf: id, place: 'sun-house', sownAt: iso(T - 21 * DAY), seedCost: 2, otherCost: 1 },
    stays: [
      { place: 'long-house', from: iso(T - 21 * DAY), to: iso(T - 10 * DAY) },
      { place: 'outside', from: iso(T - 10 * DAY), to: iso(T - 5 * DAY) },
      { place: 'sun-house', from: iso(T - 5 * DAY), to: null },
    ],
    works: [{ work: 'moving', minutes: 8 }],
  });
});

test('trays carried off are taken back in both batches, or refused while something was done since', async () => {
  const { sow, change, list, ok } = await trayHub();
  const { id } = await sow();
  const { body } = await change(id, { move: { place: 'sun-house', trays: 4 } });
  const part = body.made ?? '';
  const parted = body.history[0]?.entry ?? 0;
  const cut = (await change(part, { cut: { kg: 1, trays: 1 } })).body;
  const refused = await change(id, { undo: parted });
  expect(refused.status).toBe(409);
  expect(refused.body.error).toBe(
    `Expected basil-0402-2 with nothing entered of it since in undo, got ${parted}: take that back first`,
  );
  const sownPart = (await ok('GET', `/api/batches/${part}`)).entry;
  expect((await change(part, { undo: sownPart })).status).toBe(409);
  expect((await change(part, { undo: cut.history[0]?.entry })).status).toBe(200);
  const back = await change(part, { undo: sownPart });
  expect(back.body.state).toBe('withdrawn');
  expect((await list()).map(({ traysLeft }) => traysLeft)).toEqual([12]);
  // Taking the taking back back, from the other side.
  const [undone] = (await ok('GET', `/api/batches/${id}`)).history;
  expect((await change(id, { undo: undone?.entry })).status).toBe(200);
  expect((await list()).map(({ traysLeft }) => traysLeft)).toEqual([8, 4]);
  // The sowing of trays that went on elsewhere is not taken back under them.
  const { entry } = await ok('GET', `/api/batches/${id}`);
  const whole = await change(id, { undo: entry });
  expect([whole.status, whole.body.error]).toEqual([
    409,
    `Expected a batch that no trays were carried off from in undo, got ${entry}: take back basil-0402-2 first`,
  ]);
});

test('trays that were cut since do not come back twice', async () => {
  const { sow, change } = await trayHub();
  const { id } = await sow();
  const out = (await change(id, { throwOut: { trays: 6, look: 'leggy' } })).body.history[0]?.entry;
  const back = (await change(id, { undo: out })).body;
  expect(back.traysLeft).toBe(12);
  await change(id, { cut: { kg: 3, trays: 8 } });
  const again = await change(id, { undo: back.history[0]?.entry });
  expect(again.body.error).toBe(
    `Expected an entry that can be taken back in undo, got ${back.history[0]?.entry}: basil-0402-1 would have 14 of 12 trays gone`,
  );
  expect((await change(id, { undo: out })).status).toBe(409);
});

test('what was sown together is corrected together, and taken back together', async () => {
  const { sow, change, ok } = await trayHub();
  const { id } = await sow({ seedCost: 6 });
  const { body } = await change(id, { move: { place: 'sun-house', trays: 4 } });
  const part = body.made ?? '';
  const set = { crop: 'pea-shoots', sownAt: iso(T - 20 * DAY), seedCost: 5, note: 'wrong tray' };
  const corrected = await change(id, { correct: set });
  expect(corrected.body).toMatchObject({ crop: 'pea-shoots', seedCost: 5 });
  expect(soft(corrected.body.history[0]?.words ?? '')).toBe(
    'Corrected: crop Pea shoots, cost of seed €7.00 and sown at Fri 3 Apr 12:00 (wrong tray).',
  );
  expect(await ok('GET', `/api/batches/${part}`)).toMatchObject({
    ...{ crop: 'pea-shoots', sownAt: iso(T - 20 * DAY), seedCost: 2 },
    stays: [{ from: iso(T - 20 * DAY) }, { place: 'sun-house' }],
  });
  await change(part, { undo: (await ok('GET', `/api/batches/${part}`)).history[0]?.entry });
  expect((await ok('GET', `/api/batches/${id}`)).crop).toBe('basil');
});

test('a place that holds fewer trays is warned about, and a name puts them there', async () => {
  const { sow, ask, change } = await trayHub();
  const { id } = await sow({ trays: 30 });
  const sowing = { crop: 'basil', trays: 11, place: 'long-house' };
  const full = await ask('POST', '/api/batches', sowing);
  expect(full.status).toBe(409);
  expect(soft(full.body.error ?? '')).toBe(
    'Expected a name in override.by to put it there anyway, got none: Long House would hold 41 trays, and has room for 40',
  );
  const heeded = await ask('POST', '/api/batches', { ...sowing, override: { by: 'Ada' } });
  expect(heeded.status).toBe(200);
  expect(soft(heeded.body.history[0]?.words ?? '')).toMatch(
    /in spite of: Long House would hold 41 trays, and has room for 40; decided by Ada/,
  );
  const move = { place: 'sun-house', trays: 21 };
  expect((await change(id, { move })).status).toBe(409);
  expect((await change(id, { move, override: { by: 'Ada' } })).body.made).toBe('basil-0402-2');
  expect((await change(id, { move: { place: 'outside' } })).status).toBe(200); // room not told
});

test('the sowings of a week ago are offered and sown again at one tap, each once', async () => {
  const { sow, ok, list, ask } = await trayHub();
  const offers = () => ok<BatchOffers>('GET', '/api/batches/offers');
  expect((await offers()).asLastWeek).toEqual([]);
  await sow({ sownAt: iso(T - 9 * DAY), trays: 3 });
  const a = await sow({ sownAt: iso(T - 8 * DAY), trays: 4, meantFor: '2026-05-07', seedCost: 2 });
  const b = await sow({
    ...{ sownAt: iso(T - 7 * DAY + HOUR), trays: 5, crop: 'pea-shoots', place: 'sun-house' },
  });
  const { asLastWeek, crops, places } = await offers();
  expect(asLastWeek.map(({ batch, again }) => [batch, again])).toEqual([
    [a.id, null],
    [b.id, null],
  ]);
  expect(crops.map(({ crop, times, trays, place }) => [crop, times, trays, place])).toEqual([
    ['basil', 2, 4, 'long-house'],
    ['pea-shoots', 1, 5, 'sun-house'],
    ['chives', 0, null, null],
  ]);
  expect(places).toEqual([
    {
      ...{ place: 'long-house', name: 'Long House', kind: 'tunnel' },
      capacity: 40,
      standing: 7,
      room: 33,
    },
    {
      ...{ place: 'sun-house', name: 'Sun House', kind: 'tunnel' },
      capacity: 20,
      standing: 5,
      room: 15,
    },
    {
      ...{ place: 'outside', name: 'Outside', kind: 'outdoor' },
      capacity: null,
      standing: 0,
      room: null,
    },
  ]);
  const made = await ok<{ id: string }[]>('POST', '/api/batches/repeat', { batches: [a.id, b.id] });
  expect(made.map(({ id }) => id)).toEqual(['basil-0423-1', 'pea-shoots-0423-1']);
  expect((await list()).slice(-2)).toMatchObject([
    { crop: 'basil', trays: 4, sownAt: iso(T), meantFor: '2026-05-14', seedCost: 2 },
    { crop: 'pea-shoots', trays: 5, place: 'sun-house', seedCost: null },
  ]);
  expect((await offers()).asLastWeek.map(({ again }) => again)).toEqual(made.map(({ id }) => id));
  // Too full for one of them: neither is sown.
  await sow({ place: 'sun-house', trays: 10 });
  const before = (await list()).length;
  const full = await ask('POST', '/api/batches/repeat', { batches: [a.id, b.id] });
  expect(full.status).toBe(409);
  expect((await list()).length).toBe(before);
});
