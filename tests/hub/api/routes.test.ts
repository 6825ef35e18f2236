import { expect, test } from 'vitest';
import * as contract from '../../../hub/contract/index.ts';
import { farmText, HOUR, MINUTE, servedHub } from '../smallFarm.ts';

const T = Date.UTC(2026, 4, 10, 9);
const iso = (t: number) => new Date(t).toISOString();

async function askedHub(options: Parameters<typeof servedHub>[0] = { now: T }) {
  const hub = await servedHub(options);
  const get = async (url: string) => {
    const reply = await hub.app.inject({ url });
    return { status: reply.statusCode, body: reply.json() };
  };
  const post = async (url: string, payload: unknown) => {
    const reply = await hub.app.inject({
      method: 'POST',
      url,
      headers: { 'content-type': 'application/json' },
      payload: typeof payload === 'string' ? payload : JSON.stringify(payload),
    });
    return { status: reply.statusCode, body: reply.json() };
  };
  return { ...hub, get, post };
}

/** A hub with readings of the last hours and a look at them. */
async function lively() {
  const hub = await askedHub();
  for (let t = T - 6 * HOUR; t <= T; t += 5 * MINUTE) {
    hub.send('p1', 'temperature', t, 18 + (t % 11) / 10);
    hub.send('p1', 'humidity', t, 82);
    hub.send('mast', 'temperature', t, 12 + (t % 7) / 10);
    hub.send('mast', 'humidity', t, 70);
    hub.send('cold', 'temperature', t, 3 + (t % 13) / 20);
  }
  hub.core.look();
  return hub;
}

test.for([
  ['/api/today', contract.today],
  ['/api/tasks', contract.task.array()],
  ['/api/tasks?state=all', contract.task.array()],
  ['/api/places', contract.placeNow.array()],
  ['/api/places/long-house', contract.placeNow],
  ['/api/places/long-house/days', contract.day.array()],
  ['/api/frost/tonight', contract.nightForecast.array()],
  ['/api/cool-rooms/cool-room', contract.coolRoom],
  ['/api/probes', contract.probe.array()],
  ['/api/refused', contract.refused.array()],
  ['/api/health', contract.health],
  ['/api/farm', contract.farmFacts],
  ['/api/strips', contract.strips],
  ['/api/who', contract.who],
  ['/api/first', contract.first],
] as const)('%s answers in the form of the contract', async ([url, schema]) => {
  const { get, faults } = await lively();
  const { status, body } = await get(url);
  expect(faults).toEqual([]);
  expect(status).toBe(200);
  expect(schema.parse(body)).toEqual(body);
});

test.for(['/api/today', '/api/places', '/api/strips', '/api/frost/tonight'])(
  '%s before the first look says that there was none yet',
  async (url) => {
    const { get } = await askedHub();
    const { status, body } = await get(url);
    expect([status, body.error]).toEqual([503, expect.stringMatching(/^Expected a first look/)]);
  },
);

test('a place tells what was measured, when, and what follows from it', async () => {
  const { get } = await lively();
  const { body } = await get('/api/places/long-house');
  expect(body).toMatchObject({
    name: 'Long House',
    kind: 'tunnel',
    humidity: 82,
    readAt: iso(T),
    stale: false,
    wet: false,
    opened: null,
  });
  // Source: WMO-No. 8, annex 4.B, Magnus form, worked by hand: 18.0 °C at 82 % is 14.9 °C.
  expect(body.dewPoint).toBeGreaterThan(body.temperature - 3.6);
  expect(body.dewPoint).toBeLessThan(body.temperature - 2.8);
});

test('an old reading is said to be old, and the place cannot be told', async () => {
  const { get, clock, core } = await lively();
  clock.set(T + 3 * HOUR);
  core.look();
  const { body } = await get('/api/places/long-house');
  expect(body.stale).toBe(true);
  expect(body.words).toMatch(/^Cannot say/);
  const today = await get('/api/today');
  expect(today.body.sentence).toMatch(/Cannot say how .*Long House/);
});

test.for([
  ['/api/places/nowhere', 404, /^Expected one of long-house, .* in id, got "nowhere"$/],
  ['/api/places/nowhere/days', 404, /got "nowhere"$/],
  ['/api/places/long-house/days?from=yesterday', 400, /in from, got "yesterday"$/],
  ['/api/places/long-house/days?from=2026-02-30', 400, /in from, got "2026-02-30"$/],
  ['/api/places/long-house/days?from=2026-05-10&to=2026-05-01', 400, /^Expected from at most/],
  ['/api/places/long-house/days?from=1900-01-01&to=2026-05-01', 400, /^Expected at most 3660 days/],
  ['/api/tasks?state=some', 400, /in state, got "some"$/],
  ['/api/cool-rooms/long-house', 404, /^Expected the id of a cool room, got "long-house"$/],
  ['/api/series?place=long-house&quantity=temperature', 400, /in from, got nothing$/],
  ['/api/nothing', 404, /^Expected an address of the hub, got \/api\/nothing$/],
  ['/nothing?secret=1', 404, /got \/nothing$/],
] as const)('%s is refused with %d and a sentence', async ([url, status, sentence]) => {
  const { get } = await lively();
  const reply = await get(url);
  expect([reply.status, reply.body]).toEqual([status, { error: expect.stringMatching(sentence) }]);
});

test('a correction that takes a reading past its range does not take the pages with it', async () => {
  const hub = await askedHub({ now: T, farm: farmText({ offset: 5 }) });
  hub.send('p1', 'temperature', T, 58);
  hub.send('p1', 'humidity', T, 20);
  hub.core.look();
  expect((await hub.get('/api/places')).status).toBe(200);
  expect((await hub.get('/api/today')).status).toBe(200);
  expect((await hub.get('/api/places/long-house/days')).status).toBe(200);
});

test('a value without end does not take the list of probes with it', async () => {
  const hub = await askedHub();
  hub.core.intake.receive(
    {
      topic: 'garden/p1/rain',
      payload: Buffer.from('{"v":1e308,"u":"m"}'),
      receivedAt: T,
      again: false,
    },
    () => {},
  );
  hub.core.intake.flush();
  const { status, body } = await hub.get('/api/probes');
  expect(status).toBe(200);
  expect(contract.probe.array().parse(body)).toEqual(body);
});

test('health tells of late readings and of a broker that is away', async () => {
  const { get, clock, core, parts } = await lively();
  expect((await get('/api/health')).body).toMatchObject({ status: 'ok', lastReadingAt: iso(T) });
  clock.set(T + 61 * MINUTE);
  core.look();
  expect((await get('/api/health')).body.status).toBe('late');
  Object.assign(parts, { brokerConnected: () => false });
  const { status, body } = await get('/api/health');
  expect([status, body.status]).toEqual([200, 'degraded']);
});

test('a hub without readings says so, and one without a clock, too', async () => {
  const { get, core } = await askedHub();
  core.look();
  expect((await get('/api/health')).body).toMatchObject({ status: 'no-readings', clock: 'ok' });
  const unset = await askedHub({ now: T, isSet: false });
  expect((await unset.get('/api/health')).body).toMatchObject({
    clock: 'unset',
    evaluatedAt: null,
  });
});

test.for([
  ['{"answer":', 400],
  ['', 400],
  ['[]', 400],
  ['{"answer":"maybe"}', 400],
  ['{"answer":"done","extra":1}', 400],
  [`{"answer":"no","note":"${'x'.repeat(501)}"}`, 400],
] as const)('the answer %j is refused with a sentence', async ([payload, status]) => {
  const { post } = await lively();
  const reply = await post('/api/tasks/x/answer', payload);
  expect(reply.status).toBe(status);
  expect(reply.body.error).toMatch(/^Expected .*, got /);
});
