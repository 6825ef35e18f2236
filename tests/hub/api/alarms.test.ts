import { expect, test } from 'vitest';
import * as contract from '../../../hub/contract/index.ts';
import { HOUR, MINUTE, servedHub } from '../smallFarm.ts';

const T = Date.UTC(2026, 4, 10, 9);
const ALWAYS = { from: '00:00', to: '00:00' };
const ann = {
  name: 'Ann',
  email: 'ann@example.org',
  webhook: 'http://127.0.0.1:9/hook?token=hidden',
  hours: { urgent: ALWAYS, today: { from: '07:00', to: '21:00' } },
};

/** A hub whose cool room's only probe fell silent: an alarm of the kind `probe` stands. */
async function alarmed(options: Parameters<typeof servedHub>[0] = { now: T }) {
  const hub = await servedHub(options);
  hub.send('cold', 'temperature', T, 3);
  hub.clock.set(T + HOUR);
  hub.core.look();
  const get = async (url: string) => {
    const reply = await hub.app.inject({ url });
    return { status: reply.statusCode, body: reply.json() };
  };
  const post = async (url: string, payload: object = {}) => {
    const reply = await hub.app.inject({ method: 'POST', url, payload });
    return { status: reply.statusCode, body: reply.json(), text: reply.body };
  };
  const now = async (): Promise<contract.AlarmsNow> => (await get('/api/alarms')).body;
  return { ...hub, get, post, now };
}

test('what stands is told in the form of the contract', async () => {
  const { now, get, faults } = await alarmed();
  const shown = await now();
  expect(faults).toEqual([]);
  expect(contract.alarmsNow.parse(shown)).toEqual(shown);
  expect(shown.alarms).toMatchObject([
    { kind: 'probe', place: 'cool-room', rank: 'today', state: 'active-unacknowledged' },
  ]);
  for (const [url, schema] of [
    ['/api/alarms/settings', contract.alarmSettings],
    ['/api/alarms/log', contract.alarmLog],
  ] as const) {
    const { body } = await get(url);
    expect(schema.parse(body)).toEqual(body);
  }
});

test('"seen" is by name and journalled; the first who saw it stays, what it was may follow', async () => {
  const { now, post, store, clock } = await alarmed();
  const id = (await now()).alarms[0]?.id ?? '';
  const seen = await post(`/api/alarms/${encodeURIComponent(id)}/seen`);
  expect(seen.body.alarms).toMatchObject([
    { state: 'active-acknowledged', seenBy: 'grower', sounds: false, was: null },
  ]);
  const at = seen.body.alarms[0].seenAt;
  clock.set(T + 2 * HOUR);
  const again = await post(`/api/alarms/${encodeURIComponent(id)}/seen`, { was: 'false' });
  expect(again.body.alarms).toMatchObject([{ seenAt: at, was: 'false' }]);
  expect(store.journal.between('alarm', 0, T * 2).map(({ who, body }) => [who, body])).toEqual([
    ['grower', { id, event: 'seen' }],
    ['grower', { id, event: 'seen', was: 'false' }],
  ]);
  expect((await post('/api/alarms/nothing/seen')).status).toBe(404);
});

test('an alarm that ended by itself stays until somebody sees it', async () => {
  const { now, post, send, clock, core } = await alarmed();
  for (let t = T + HOUR; t <= T + 3 * HOUR; t += 5 * MINUTE) {
    clock.set(t);
    send('cold', 'temperature', t, 3 + (t % 7) / 20);
    core.look();
  }
  const alarm = (await now()).alarms[0];
  expect(alarm).toMatchObject({ kind: 'probe', state: 'cleared-unacknowledged', sounds: false });
  clock.set(T + 30 * 24 * HOUR);
  expect((await now()).alarms).toHaveLength(1);
  const seen = await post(`/api/alarms/${encodeURIComponent(alarm?.id ?? '')}/seen`);
  expect(seen.body.alarms).toEqual([]);
});

test('answering the task is as good as "seen"', async () => {
  const { now, post, get } = await alarmed();
  const id = (await now()).alarms[0]?.id ?? '';
  await post(`/api/tasks/${encodeURIComponent(id)}/answer`, { answer: 'done' });
  expect((await now()).alarms).toEqual([]);
  const { body } = await get('/api/alarms/log');
  expect(body.entries).toMatchObject([{ id, state: 'over', seenBy: 'grower' }]);
});

test('secrets are taken and never given back', async () => {
  const { post, get } = await alarmed();
  const set = await post('/api/alarms/settings', {
    people: [ann],
    webhookSecret: 'a-shared-secret-of-ours',
    mail: {
      ...{ host: 'mail.example.org', port: 587, security: 'starttls', user: 'hub' },
      ...{ from: 'hub@example.org', certificate: null, password: 'mail-password' },
    },
    alive: { url: 'http://127.0.0.1:9/alive/hidden', everyMinutes: 30 },
  });
  expect(set.status).toBe(200);
  expect(set.body).toMatchObject({
    hasWebhookSecret: true,
    mail: { hasPassword: true },
    alive: { server: 'http://127.0.0.1:9', everyMinutes: 30 },
    people: [{ webhook: 'http://127.0.0.1:9' }],
  });
  const all = await Promise.all(
    ['/api/alarms/settings', '/api/alarms', '/api/alarms/log', '/metrics', '/api/health'].map(
      async (url) => JSON.stringify((await get(url).catch(() => ({ body: '' }))).body),
    ),
  );
  for (const text of [set.text, ...all])
    expect(text).not.toMatch(/hidden|mail-password|a-shared-secret/);
  // Left out: kept. The address that is kept still goes with the person.
  const { id } = set.body.people[0];
  const { webhook: _, ...known } = ann;
  const kept = await post('/api/alarms/settings', { people: [{ ...known, id }] });
  expect(kept.body).toMatchObject({
    people: [{ id, webhook: 'http://127.0.0.1:9' }],
    mail: { hasPassword: true },
  });
  const gone = await post('/api/alarms/settings', {
    people: [{ ...ann, id, webhook: null }],
    mail: null,
    webhookSecret: null,
  });
  expect(gone.body).toMatchObject({
    people: [{ webhook: null }],
    mail: null,
    hasWebhookSecret: false,
  });
});

test.for([
  [{ people: [{ ...ann, email: 'not an address' }] }, /in people\.0\.email/],
  [{ people: [{ ...ann, webhook: 'ftp://x/secret-path' }] }, /in people\.0\.webhook/],
  [{ people: [{ ...ann, id: 'nobody' }] }, /in people, got "nobody"$/],
  [{ people: [{ ...ann, hours: { urgent: { from: '7', to: '8' }, today: null } }] }, /06:30/],
  [{ waits: { second: 30, third: 20, everybody: 40 } }, /^Expected waits that grow/],
  [{ most: 0 }, /in most/],
  [{ webhookSecret: 'short-secret' }, /in webhookSecret, got another one$/],
  [{ alive: { everyMinutes: 5 } }, /in alive\.url, got nothing$/],
  [{ mail: { host: 'a b', port: 1 } }, /in mail\.host/],
  [{ surprise: 1 }, /no field surprise/],
] as const)('settings %j are refused with a sentence', async ([change, sentence]) => {
  const { post } = await alarmed();
  const { status, body } = await post('/api/alarms/settings', change);
  expect([status, body.error]).toEqual([400, expect.stringMatching(sentence)]);
  expect(body.error).not.toMatch(/secret-path|short-secret/);
});

test('a silence has a reason and an end, is journalled with who, and is ended by hand', async () => {
  const { post, now, store, clock } = await alarmed();
  const asked = { place: 'cool-room', minutes: 60, reason: 'defrosting the unit' };
  const { body } = await post('/api/alarms/silences', asked);
  expect(contract.shownSilence.parse(body)).toEqual(body);
  expect(await now()).toMatchObject({
    alarms: [{ silentUntil: new Date(T + 2 * HOUR).toISOString() }],
    silences: [{ placeName: 'Cool room', who: 'grower', reason: 'defrosting the unit' }],
  });
  clock.set(T + 2 * HOUR);
  expect((await now()).silences).toEqual([]);
  clock.set(T + 90 * MINUTE);
  await post(`/api/alarms/silences/${body.id}/end`);
  expect((await now()).silences).toEqual([]);
  expect((await post(`/api/alarms/silences/${body.id}/end`)).status).toBe(404);
  const written = store.journal.between('silence', 0, T * 2);
  expect(written.map(({ who, body: said }) => [who, (said as { event: string }).event])).toEqual([
    ['grower', 'begun'],
    ['grower', 'ended'],
  ]);
});

test.for([
  [{ minutes: 721, reason: 'a long day' }, /in minutes/],
  [{ minutes: 121, reason: 'picking', kind: 'warm' }, /^Expected at most 120 minutes/],
  [{ minutes: 121, reason: 'picking', kind: 'frost' }, /^Expected at most 120 minutes/],
  [{ minutes: 30, reason: '' }, /in reason/],
  [{ minutes: 30 }, /in reason, got nothing$/],
  [{ minutes: 30, reason: 'work', place: 'attic' }, /in place, got "attic"$/],
] as const)('the silence %j is refused', async ([asked, sentence]) => {
  const { post } = await alarmed();
  const { status, body } = await post('/api/alarms/silences', asked);
  expect([status, body.error]).toEqual([400, expect.stringMatching(sentence)]);
});

test('the log counts by month and kind, and is a table for a spreadsheet', async () => {
  const { post, now, get, app } = await alarmed();
  const id = (await now()).alarms[0]?.id ?? '';
  await post(`/api/alarms/${encodeURIComponent(id)}/seen`, { was: 'false' });
  const { body } = await get('/api/alarms/log');
  // Source: Wilson 1927 score interval for 1 of 1 at 95 %: 1 / (1 + z²) to 1, z = 1.959964.
  expect(body.counts).toEqual([
    {
      ...{ month: '2026-05', kind: 'probe', raised: 1, seen: 1, minutesToSeen: 0, answered: 1 },
      falseOnes: 1,
      falseShare: { share: 1, low: expect.closeTo(0.20654, 4), high: 1 },
    },
  ]);
  const csv = await app.inject({ url: '/api/alarms/log.csv' });
  expect(csv.headers['content-type']).toMatch(/^text\/csv/);
  const [head, row, rest] = csv.body.split('\r\n');
  expect(head).toBe('raised,cleared,place,kind,rank,count,seen_by,seen_at,was,told,words');
  expect(row).toMatch(/^2026-05-10T10:00:00\.000Z,,Cool room,probe,today,1,grower,2026-/);
  expect(rest).toBe('');
  expect(
    (await get('/api/alarms/log?from=2026-05-11T00:00:00Z&to=2026-05-10T00:00:00Z')).status,
  ).toBe(400);
});

test('metrics and health tell of alarms nobody saw and of ways that fail', async () => {
  const { app, get, post, core, clock } = await alarmed();
  const metric = async (name: string) =>
    Number(
      new RegExp(`^${name} (.*)$`, 'm').exec((await app.inject({ url: '/metrics' })).body)?.[1],
    );
  expect(await metric('dewpost_alarms_unseen')).toBe(1);
  expect((await get('/api/health')).body.alarmsOut).toBe('off');
  await post('/api/alarms/settings', { people: [ann] });
  expect(await metric('dewpost_alarm_messages_waiting')).toBe(2);
  // No mail server, and nobody listens at the webhook: port 9 of this machine.
  await expect
    .poll(async () => (await get('/api/health')).body.alarmsOut, { timeout: 30_000 })
    .toBe('failing');
  clock.set(clock.now() + MINUTE);
  core.alarms.work();
  await expect.poll(() => metric('dewpost_alarm_ways_failing'), { timeout: 30_000 }).toBe(2);
});

test('these addresses are for those who signed in', async () => {
  const { app } = await servedHub({ open: false });
  for (const url of [
    '/api/alarms',
    '/api/alarms/settings',
    '/api/alarms/log',
    '/api/alarms/log.csv',
  ])
    expect((await app.inject({ url })).statusCode, url).toBe(401);
  for (const url of [
    '/api/alarms/x/seen',
    '/api/alarms/silences',
    '/api/alarms/silences/x/end',
    '/api/alarms/settings',
    '/api/alarms/test',
    '/api/alarms/rehearsal',
  ])
    expect((await app.inject({ method: 'POST', url, payload: {} })).statusCode, url).toBe(401);
});
