import { expect, test } from 'vitest';
import { HOUR, MINUTE, servedHub } from '../smallFarm.ts';

const T = Date.UTC(2026, 4, 10, 9);
const iso = (t: number) => new Date(t).toISOString();

/** A hub whose p1 fell silent, so that there is a task to answer. */
async function withTask() {
  const hub = await servedHub({ now: T });
  hub.send('p1', 'temperature', T, 20);
  hub.clock.set(T + 2 * HOUR);
  hub.core.look();
  const list = async (state = 'open') =>
    (await hub.app.inject({ url: `/api/tasks?state=${state}` })).json() as {
      id: string;
      subject: string;
      answer: string | null;
      until: string | null;
    }[];
  const task = (await list()).find(({ subject }) => subject === 'p1');
  if (!task) throw new Error('Expected a task about p1, got none');
  const answer = async (payload: object, id = task.id) => {
    const reply = await hub.app.inject({
      method: 'POST',
      url: `/api/tasks/${encodeURIComponent(id)}/answer`,
      payload,
    });
    return { status: reply.statusCode, body: reply.json() };
  };
  return { ...hub, list, task, answer };
}

test.for(['done', 'no'] as const)('a task answered %s ends, and is told so', async (word) => {
  const { answer, list, task, store } = await withTask();
  const { status, body } = await answer({ answer: word, note: 'new battery' });
  expect(status).toBe(200);
  expect(body).toMatchObject({
    id: task.id,
    state: 'ended',
    answer: word,
    endedAt: iso(T + 2 * HOUR),
  });
  expect((await list()).map(({ id }) => id)).not.toContain(task.id);
  expect((await list('ended')).map(({ id }) => id)).toContain(task.id);
  expect((await list('all')).filter(({ id }) => id === task.id)).toHaveLength(1);
  expect(store.journal.between('task', 0, T * 2).at(-1)).toMatchObject({
    who: 'grower',
    body: { event: word, note: 'new battery' },
  });
});

test('the same answer twice is no mistake, and is written down once', async () => {
  const { answer, store } = await withTask();
  await answer({ answer: 'done' });
  expect((await answer({ answer: 'done' })).status).toBe(200);
  const events = store.journal.between('task', 0, T * 2).map(({ body }) => body);
  expect(events.filter((body) => (body as { event: string }).event === 'done')).toHaveLength(1);
});

test('another answer to a task that ended is refused with what it was', async () => {
  const { answer } = await withTask();
  await answer({ answer: 'done' });
  expect(await answer({ answer: 'no' })).toEqual({
    status: 409,
    body: { error: 'Expected an open task, got one that ended (done)' },
  });
});

test('an answer to a task that never was is refused by its id', async () => {
  const { answer } = await withTask();
  expect(await answer({ answer: 'done' }, 'cover.nowhere.1')).toEqual({
    status: 404,
    body: { error: 'Expected the id of a task, got "cover.nowhere.1"' },
  });
});

test('a task put off stays open until its time', async () => {
  const { answer, list, task, clock, core } = await withTask();
  const until = iso(T + 3 * HOUR);
  const { status, body } = await answer({ answer: 'later', until });
  expect([status, body.state, body.until, body.alarm]).toEqual([200, 'open', until, false]);
  expect((await list()).find(({ id }) => id === task.id)).toMatchObject({ answer: 'later', until });
  clock.set(T + 3 * HOUR);
  core.look();
  expect((await list()).find(({ id }) => id === task.id)).toMatchObject({
    answer: null,
    until: null,
  });
});

test.for([{}, { until: iso(T) }, { until: 'tomorrow' }])(
  'putting a task off to %j is refused',
  async (more) => {
    const { answer } = await withTask();
    const { status, body } = await answer({ answer: 'later', ...more });
    expect([status, body.error]).toEqual([400, expect.stringMatching(/in until, got /)]);
  },
);

async function withStray() {
  const hub = await servedHub({ now: T });
  for (let t = T - 5 * HOUR; t <= T; t += 10 * MINUTE) {
    const value = 15 + ((t / MINUTE) % 17) / 10;
    hub.send('p1', 'temperature', t, value);
    hub.send('stray', 'temperature', t, value + 0.4);
    hub.send('mast', 'temperature', t, 6);
  }
  hub.core.look();
  const place = async (id: string, payload: object) => {
    const reply = await hub.app.inject({ method: 'POST', url: `/api/probes/${id}/place`, payload });
    return { status: reply.statusCode, body: reply.json() };
  };
  const probes = async () => (await hub.app.inject({ url: '/api/probes' })).json();
  return { ...hub, place, probes };
}

test('a probe nobody placed is listed with where it seems to belong', async () => {
  const { probes } = await withStray();
  const stray = (await probes()).find(({ id }: { id: string }) => id === 'stray');
  expect(stray).toMatchObject({
    place: null,
    spot: null,
    placements: [],
    suggestion: {
      place: 'long-house',
      spot: 'canopy',
      words: expect.stringContaining('Long House'),
    },
    latest: [{ quantity: 'temperature', unit: '°C', readAt: iso(T), flag: null }],
  });
});

test('placed for the first time, it has hung there since it was first heard', async () => {
  const { place, core, store } = await withStray();
  const { status, body } = await place('stray', { place: 'south-patch', spot: 'canopy' });
  expect(status).toBe(200);
  expect(body).toMatchObject({ place: 'south-patch', suggestion: null });
  expect(body.placements).toEqual([
    { place: 'south-patch', spot: 'canopy', from: iso(T - 5 * HOUR), to: null },
  ]);
  expect(store.journal.newestOf('south-patch', 'placing')).toMatchObject({
    who: 'grower',
    subject: 'stray',
  });
  expect(
    core.lastLook()?.snapshot.places.find(({ id }) => id === 'south-patch')?.spots,
  ).toHaveLength(1);
});

test('moved, it leaves its history where it was', async () => {
  const { place } = await withStray();
  const { body } = await place('p1', { place: 'south-patch', spot: 'grass', from: iso(T - HOUR) });
  expect(body.placements).toEqual([
    { place: 'long-house', spot: 'canopy', from: iso(0), to: iso(T - HOUR) },
    { place: 'south-patch', spot: 'grass', from: iso(T - HOUR), to: null },
  ]);
});

test.for([
  [
    'nobody',
    { place: 'long-house', spot: 'canopy' },
    404,
    /^Expected a probe that was heard, got "nobody"$/,
  ],
  ['stray', { place: 'nowhere', spot: 'canopy' }, 400, /in place, got "nowhere"$/],
  ['stray', { place: 'long-house', spot: 'roof' }, 400, /in spot, got "roof"$/],
  ['stray', { place: 'long-house' }, 400, /in spot, got nothing$/],
  [
    'stray',
    { place: 'long-house', spot: 'air', from: iso(T + HOUR) },
    400,
    /^Expected a time that is past in from/,
  ],
  ['stray', { place: 'long-house', spot: 'air', from: 'now' }, 400, /in from, got "now"$/],
  ['-x', { place: 'long-house', spot: 'air' }, 400, /in id, got "-x"$/],
] as const)('placing %s with %j is refused with %d', async ([id, payload, status, sentence]) => {
  const { place } = await withStray();
  const reply = await place(id, payload);
  expect([reply.status, reply.body.error]).toEqual([status, expect.stringMatching(sentence)]);
});

test('what was refused is listed: by probe where it is known, else by what was sent', async () => {
  const { core, app, clock, probes } = await withStray();
  for (const topic of ['garden/p1/temperature', 'garden/typo/temperature', 'other/topic'])
    core.intake.receive(
      { topic, payload: Buffer.from('warm'), receivedAt: clock.now(), again: false },
      () => {},
    );
  core.intake.flush();
  const p1 = (await probes()).find(({ id }: { id: string }) => id === 'p1');
  expect(p1.refused).toMatchObject([
    { reason: 'not-json', count: 1, last: expect.stringContaining('warm') },
  ]);
  const { body } = await app.inject({ url: '/api/refused' });
  expect(JSON.parse(body).map(({ source }: { source: string }) => source)).toEqual([
    'other/topic',
    'typo',
  ]);
});
