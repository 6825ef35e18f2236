import { expect, test } from 'vitest';
import { HOUR, MINUTE, servedHub } from '../smallFarm.ts';

// What a page without a link was told, and sent later: it is entered as of when it was said.

const T = Date.UTC(2026, 4, 10, 9);
const DAY = 24 * HOUR;
const iso = (t: number) => new Date(t).toISOString();

async function hubWith() {
  const hub = await servedHub({ now: T });
  const post = async (url: string, payload: object, headers: Record<string, string> = {}) => {
    const reply = await hub.app.inject({ method: 'POST', url, payload, headers });
    return { status: reply.statusCode, body: reply.json() };
  };
  const put = (headers: Record<string, string>, more: object = {}) =>
    post('/api/lots', { crop: 'basil', place: 'cool-room', kg: 3, ...HEEDED, ...more }, headers);
  return { ...hub, post, put };
}
const HEEDED = { override: { by: 'Ann' } };
const said = (t: number) => ({ 'dewpost-said-at': iso(t) });

test('what was said an hour ago is entered as of then, in the thing and in its journal', async () => {
  const { put, store } = await hubWith();
  const { status, body } = await put(said(T - HOUR));
  expect(status).toBe(200);
  expect(body).toMatchObject({ storedAt: iso(T - HOUR), history: [{ t: iso(T - HOUR) }] });
  expect(store.journal.between('lot', 0, T * 2).map(({ t }) => t)).toEqual([T - HOUR]);
});

test('a time that a person told beside it counts for what it is of', async () => {
  const { put } = await hubWith();
  const { body } = await put(said(T - HOUR), { storedAt: iso(T - 3 * HOUR) });
  expect(body).toMatchObject({ storedAt: iso(T - 3 * HOUR), history: [{ t: iso(T - HOUR) }] });
  // Said an hour ago of half an hour ago: that was still to come.
  expect((await put(said(T - HOUR), { storedAt: iso(T - HOUR / 2) })).status).toBe(400);
});

test.for([
  ['ahead of the hub', T + 6 * MINUTE, /Expected a time that is past in Dewpost-Said-At/],
  ['too long ago', T - 15 * DAY, /Expected a time at most 14 days ago in Dewpost-Said-At/],
] as const)('a time %s is refused, and nothing is entered', async ([, t, sentence]) => {
  const { put, store } = await hubWith();
  const { status, body } = await put(said(t));
  expect(status).toBe(400);
  expect(body.error).toMatch(sentence);
  expect(store.journal.between('lot', 0, T * 2)).toEqual([]);
});

test('a clock a little ahead is taken for now, and what is no time is refused', async () => {
  const { put } = await hubWith();
  expect((await put(said(T + MINUTE))).body).toMatchObject({ storedAt: iso(T) });
  for (const no of ['yesterday', '2026-05-10', '2026-05-10T08:00:00', '0'])
    expect(await put({ 'dewpost-said-at': no })).toMatchObject({ status: 400 });
});

test('a known key is answered however long ago it was said: it was entered then', async () => {
  const { put, clock, store } = await hubWith();
  const key = { 'idempotency-key': '"8e03978e40d543ddbc9368"' };
  const first = await put({ ...key });
  clock.set(T + 20 * DAY);
  expect(await put({ ...key, ...said(T) })).toEqual(first);
  expect(store.journal.between('lot', 0, T * 2)).toHaveLength(1);
});

test('nothing that one person said is entered under the name of another', async () => {
  const { put, store } = await hubWith(); // nobody signs in: everybody is the grower
  const { status, body } = await put({ 'dewpost-said-by': encodeURIComponent('Zoë') });
  expect(status).toBe(412);
  expect(body.error).toBe('Expected "Zoë", who said this, to send it, got grower');
  expect(store.journal.between('lot', 0, T * 2)).toEqual([]);
  expect((await put({ 'dewpost-said-by': 'grower' })).status).toBe(200);
  expect((await put({ 'dewpost-said-by': '%zz' })).status).toBe(412);
});

/** p1 fell silent: a task to answer, which lapses when it is heard again. */
async function withTask() {
  const hub = await hubWith();
  const reading = (t: number) => hub.send('p1', 'temperature', t, 20);
  reading(T);
  hub.clock.set(T + 2 * HOUR);
  hub.core.look();
  const task = hub.parts.tasks.open().find(({ subject }) => subject === 'p1');
  if (!task) throw new Error('Expected a task about p1, got none');
  return { ...hub, reading, task, url: `/api/tasks/${encodeURIComponent(task.id)}/answer` };
}

test('an answer said while the task was open counts, also when its reason has gone since', async () => {
  const { post, reading, clock, core, task, url, store } = await withTask();
  const openedAt = task.openedAt;
  for (let t = T + 2 * HOUR; t <= T + 5 * HOUR; t += 5 * MINUTE) {
    clock.set(t);
    reading(t);
    core.look();
  }
  expect(core.tasks.get(task.id)).toMatchObject({ state: 'ended', answer: null });
  // Said after it had lapsed, it is too late as ever.
  expect((await post(url, { answer: 'done' })).status).toBe(409);
  expect((await post(url, { answer: 'later', until: iso(T + DAY) }, said(openedAt))).status).toBe(
    409,
  );
  const { status, body } = await post(url, { answer: 'done' }, said(openedAt + MINUTE));
  expect(status).toBe(200);
  expect(body).toMatchObject({ answer: 'done', endedAt: iso(openedAt + MINUTE) });
  const told = store.journal
    .between('task', 0, T * 2)
    .filter(({ body: one }) => (one as { event: string }).event === 'done');
  expect(told.map(({ t }) => t)).toEqual([openedAt + MINUTE]);
  // And only once: it has its answer now.
  expect((await post(url, { answer: 'no' }, said(openedAt + MINUTE))).status).toBe(409);
});

test('"later" until a time that has come meanwhile is no mistake of who said it before', async () => {
  const { post, clock, url } = await withTask();
  clock.set(T + 4 * HOUR);
  const until = iso(T + 3 * HOUR);
  expect((await post(url, { answer: 'later', until })).status).toBe(400);
  const told = await post(url, { answer: 'later', until }, said(T + 2.5 * HOUR));
  expect(told).toMatchObject({ status: 200, body: { answer: 'later' } });
});
