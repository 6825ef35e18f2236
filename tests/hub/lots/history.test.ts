import fc from 'fast-check';
import { expect, test } from 'vitest';
import { foldLot, type LotEntry, type LotEvent } from '../../../hub/lots/index.ts';
import { coldHub, HOUR, iso, MINUTE, T } from './coldFarm.ts';

const put = { crop: 'leaves', kg: 10, place: 'cool-room' };

test('parts are sold, used and thrown out until nothing is left, each an entry of its own', async () => {
  const { ask, lots, clock } = await coldHub();
  const { id } = (await ask('POST', '/api/lots', put)).body;
  expect(id).toBe('leaves-0510-1');
  const take = (take: object) => ask('PATCH', `/api/lots/${id}`, { take });
  clock.set(T + HOUR);
  expect((await take({ how: 'sold', kg: 4, to: 'market' })).body).toMatchObject({
    ...{ kg: 10, kgLeft: 6, state: 'stored' },
    taken: [{ how: 'sold', kg: 4, to: 'market', at: iso(T + HOUR) }],
  });
  expect((await take({ how: 'used', kg: 1.5 })).body.kgLeft).toBe(4.5);
  const nameless = await take({ how: 'thrown-out' });
  expect(nameless).toMatchObject({
    status: 400,
    body: { error: 'Expected the name of who decides in take.by, got nothing' },
  });
  const gone = (await take({ how: 'thrown-out', by: 'Ada' })).body;
  expect(gone).toMatchObject({ kgLeft: 0, state: 'ended', endedAt: iso(T + HOUR), turn: null });
  expect(gone.history.map(({ event }) => event)).toEqual(['taken', 'taken', 'taken', 'put-away']);
  expect(await lots()).toEqual([]);
  expect((await lots('ended')).map((lot) => lot.id)).toEqual([id]);
  expect((await take({ how: 'sold', kg: 1 })).status).toBe(409);
});

test('a correction is a new entry, and what was said before is still told', async () => {
  const { ask, store } = await coldHub();
  const { id } = (await ask('POST', '/api/lots', put)).body;
  const { body } = await ask('PATCH', `/api/lots/${id}`, {
    ...{ correct: { kg: 8, harvestedAt: iso(T - HOUR) }, note: 'scale' },
  });
  expect(body).toMatchObject({ kg: 8, kgLeft: 8, harvestedAt: iso(T - HOUR), entries: 2 });
  expect(body.history[0]?.words).toMatch(/^Corrected \(scale\): weight 8.kg and harvested at /);
  expect(body.history[1]?.words).toMatch(/^Put away, 10.kg\.$/);
  expect(store.journal.after('lot', 0).map((one) => one.body)).toMatchObject([
    { event: 'put-away', facts: { kg: 10, harvestedAt: null } },
    { event: 'corrected', set: { kg: 8, harvestedAt: T - HOUR } },
  ]);
});

test('what was entered by mistake is taken back by an entry, and can be put back by another', async () => {
  const { ask, lots } = await coldHub();
  const first = (await ask('POST', '/api/lots', put)).body;
  const url = `/api/lots/${first.id}`;
  const taken = (await ask('PATCH', url, { undo: first.entry })).body;
  expect(taken.state).toBe('withdrawn');
  expect(await lots()).toEqual([]);
  expect(taken.history.map(({ event, undone }) => [event, undone])).toEqual([
    ['undone', false],
    ['put-away', true],
  ]);
  const last = taken.history[0]?.entry;
  expect((await ask('PATCH', url, { undo: last })).body.state).toBe('stored');
  expect((await ask('PATCH', url, { undo: last })).status).toBe(409);
  expect((await ask('PATCH', url, { undo: 999 })).status).toBe(409);
});

test('a lot that goes on in another cool room takes its past with it', async () => {
  const { ask, readings, clock } = await coldHub();
  readings('cold', T, T + 10 * HOUR, 3);
  readings('warm', T, T + 20 * HOUR, 11);
  clock.set(T + 20 * HOUR);
  const { id } = (
    await ask('POST', '/api/lots', { ...put, crop: 'own', storedAt: iso(T), harvestedAt: iso(T) })
  ).body;
  const { body } = await ask('PATCH', `/api/lots/${id}`, {
    take: { how: 'moved', to: 'cellar', at: iso(T + 10 * HOUR) },
  });
  expect(body).toMatchObject({ place: 'cellar', kgLeft: 10, state: 'stored' });
  // By hand: 10 h x 3^0.3 + 10 h x 3^1.1 = 47.39 h used of 240; (240 - 47.39) / 3^1.1 / 24 = 2.397 d.
  expect(body.life.days?.least).toBeCloseTo(2.4, 2);
  expect(body.life.unknownHours).toBe(0);
});

test.for([
  { crop: 'grass', kg: 1, place: 'cool-room' },
  { crop: 'leaves', kg: 0, place: 'cool-room' },
  { crop: 'leaves', kg: 1, place: 'long-house' },
  { crop: 'leaves', kg: 1, place: 'cool-room', from: 'moon' },
  { crop: 'leaves', kg: 1, place: 'cool-room', storedAt: iso(T + HOUR) },
  { crop: 'leaves', kg: 1, place: 'cool-room', harvestedAt: iso(T + MINUTE) },
  { crop: 'leaves', kg: 1, place: 'cool-room', colour: 'green' },
])('a lot that cannot be is refused in one sentence, and nothing is kept: %j', async (given) => {
  const { ask, store } = await coldHub();
  const { status, body } = await ask('POST', '/api/lots', given);
  expect(status).toBe(400);
  expect(body.error).toMatch(/^Expected [^\n]+, got /);
  expect(store.journal.after('lot', 0)).toEqual([]);
});

test.for([
  {},
  { take: { how: 'sold' }, undo: 1 },
  { take: { how: 'sold', kg: 99 } },
  { take: { how: 'sold', at: iso(T - HOUR) } },
  { correct: {} },
  { correct: { kg: -1 } },
  { release: {} },
])('a change that cannot be is refused in one sentence: %j', async (given) => {
  const { ask, store } = await coldHub();
  const { id } = (await ask('POST', '/api/lots', put)).body;
  const { status, body } = await ask('PATCH', `/api/lots/${id}`, given);
  expect(status).toBe(400);
  expect(body.error).toMatch(/^Expected [^\n]+, got /);
  expect(store.journal.after('lot', 0)).toHaveLength(1);
});

test('limit, clock and words of a class hold for its lots, and a named person may keep them', async () => {
  const { ask, readings, clock, core } = await coldHub();
  readings('cold', T, T + 6 * HOUR, 9);
  clock.set(T + 6 * HOUR);
  const { id } = (await ask('POST', '/api/lots', { ...put, storedAt: iso(T) })).body;
  const nameless = await ask('POST', '/api/food-clocks/cut', {
    ...{ limit: 8, clockHours: 4, words: 'Ask Ms Officer.' },
  });
  expect(nameless.status).toBe(400);
  await ask('POST', '/api/food-clocks/cut', {
    ...{ limit: 8, clockHours: 4, words: 'Ask Ms Officer.', by: 'Ada' },
  });
  const lot = (await ask('GET', `/api/lots/${id}`)).body;
  expect(lot.exposure).toMatchObject({ limit: 8, aboveMinutes: 360, clockHours: 4 });
  expect(lot.clockWords).toContain('Ask Ms Officer.');
  type Shown = { id: string; kind: string; why: string };
  const asked = async () =>
    ((await ask<Shown[]>('GET', '/api/tasks')).body as never as Shown[]).filter(
      ({ kind }) => kind === 'throw-out',
    );
  core.look();
  const [task] = await asked();
  expect(task?.why).toMatch(
    /over its limit for 6 hours since harvest; the agreed clock is 4 hours/,
  );
  await ask('PATCH', `/api/lots/${id}`, { release: { by: 'Ada' } });
  clock.set(T + 6 * HOUR + 31 * MINUTE);
  core.look();
  expect(await asked()).toEqual([]);
});

// What holds whatever is entered.
const events: fc.Arbitrary<LotEvent> = fc.oneof(
  fc.record({
    event: fc.constant('taken' as const),
    how: fc.constantFrom('sold' as const, 'used' as const),
    kg: fc.double({ min: 0.1, max: 5, noNaN: true }),
    at: fc.constant(T),
    ...{ to: fc.constant(null), by: fc.constant(null), note: fc.constant(null) },
  }),
  fc.record({
    event: fc.constant('corrected' as const),
    set: fc.record({ kg: fc.double({ min: 1, max: 30, noNaN: true }) }),
    note: fc.constant(null),
  }),
  fc.record({ event: fc.constant('undone' as const), entry: fc.integer({ min: 1, max: 12 }) }),
);
const first: LotEvent = {
  event: 'put-away',
  override: null,
  facts: {
    ...{ ...put, from: null, harvestedAt: null, storedAt: T },
    ...{ cooled: null, class: null, price: null },
  },
};

test('a later entry never removes one before it, and what is left is never less than nothing', () => {
  fc.assert(
    fc.property(fc.array(events, { maxLength: 11 }), (more) => {
      const entries: LotEntry[] = [first, ...more].map((body, i) => ({
        ...{ id: i + 1, t: T + i, who: 'Ada', body },
      }));
      for (let n = 1; n <= entries.length; n++) {
        const lot = foldLot('x', entries.slice(0, n));
        expect(lot?.entries).toEqual(entries.slice(0, n));
        expect(lot?.kgLeft).toBeGreaterThanOrEqual(0);
        expect(lot?.state === 'ended').toBe(lot?.kgLeft === 0 && lot.state !== 'withdrawn');
      }
    }),
  );
});

test('taking back the newest entry gives the lot as it was before it', () => {
  fc.assert(
    fc.property(fc.array(events, { maxLength: 8 }), (more) => {
      const entries: LotEntry[] = [first, ...more].map((body, i) => ({
        ...{ id: i + 1, t: T + i, who: 'Ada', body },
      }));
      const before = foldLot('x', entries.slice(0, -1));
      if (before === null) return;
      const body = { event: 'undone' as const, entry: entries.length };
      const after = foldLot('x', [...entries, { id: 99, t: T, who: 'Ada', body }]);
      expect({ ...after, entries: [] }).toEqual({ ...before, entries: [] });
    }),
  );
});
