import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { startEmbedded } from '../../../hub/broker/index.ts';
import * as contract from '../../../hub/contract/index.ts';
import { startHub } from '../../../hub/main/start.ts';
import { runVerb } from '../../../hub/main/verbs/verbs.ts';
import { connected, eventually } from '../broker/connected.ts';
import { farmText, smallHub } from '../smallFarm.ts';
import { tempFolder } from '../tempStore.ts';

const T = Date.UTC(2026, 4, 10, 9);

async function joined() {
  const hub = smallHub({ now: T });
  const broker = await startEmbedded({
    host: '127.0.0.1',
    port: 0,
    mayConnect: async () => true,
    mayPublish: () => true,
    receive: (message, acknowledge) =>
      hub.core.intake.receive({ ...message, receivedAt: hub.clock.now() }, acknowledge),
  });
  onTestFinished(() => broker.close());
  const rows = (quantity = 'temperature') =>
    hub.store.readings.allBetween('p1', quantity, 0, Number.MAX_SAFE_INTEGER);
  return { ...hub, broker, rows };
}

test('200 acknowledged messages are 200 rows', async () => {
  const { broker, rows } = await joined();
  const client = await connected(broker.address);
  await Promise.all(
    Array.from({ length: 200 }, (_, i) =>
      client.publishAsync(
        'garden/p1/temperature',
        JSON.stringify({ v: 15 + (i % 10) / 10, t: T - (200 - i) * 60_000 }),
        { qos: 1 },
      ),
    ),
  );
  expect(rows()).toHaveLength(200);
  expect(rows().every(({ flag }) => flag === null)).toBe(true);
});

test('200 bare numbers that come at once are 200 rows', async () => {
  const { broker, rows } = await joined();
  const client = await connected(broker.address);
  await Promise.all(
    Array.from({ length: 200 }, (_, i) =>
      client.publishAsync('garden/p1/light', String(i), { qos: 1 }),
    ),
  );
  expect(
    rows('light')
      .map(({ value }) => value)
      .sort((a, b) => a - b),
  ).toEqual(Array.from({ length: 200 }, (_, i) => i));
});

test('messages of every form and of none are all acknowledged, and what they hold is kept', async () => {
  const { broker, rows, store } = await joined();
  const client = await connected(broker.address);
  const send = (topic: string, payload: string | Buffer) =>
    client.publishAsync(topic, payload, { qos: 1 });
  await send(
    'garden/p1',
    JSON.stringify([
      { n: 'temperature', u: 'Cel', v: 20 },
      { n: 'humidity', v: 70 },
    ]),
  );
  await send('weather/p1/state', JSON.stringify({ air: { t: 20.1, rh: 71 } }));
  await send('garden/p1/door', 'true');
  await send('garden/p1/temperature', 'warm');
  await send('garden/p1/temperature', Buffer.from([0xff, 0xfe]));
  await send('elsewhere', '1');
  expect(rows('humidity').length).toBeGreaterThan(0);
  expect(rows('door')).toMatchObject([{ value: 1 }]);
  const reasons = store.refusals.since(0).map(({ reason, count }) => [reason, count]);
  expect(Object.fromEntries(reasons)).toMatchObject({ 'not-json': 2, 'unknown-form': 1 });
});

test('a whole hub: a probe signs in, sends, and its reading is in what the hub says', async () => {
  const folder = tempFolder();
  const farm = join(folder, 'farm.yaml');
  writeFileSync(farm, farmText());
  const data = join(folder, 'data');
  const write = process.stdout.write;
  let out = '';
  process.stdout.write = ((text: string) => {
    out += text;
    return true;
  }) as typeof write;
  try {
    await runVerb(['probe', 'add', 'p1', '--data', data]);
    await runVerb(['probe', 'add', 'lamp', '--listen', '--data', data]);
  } finally {
    process.stdout.write = write;
  }
  const [password = '', lampPassword = ''] = [...out.matchAll(/password (\S+)/g)].map(
    ([, word]) => word ?? '',
  );
  process.env.DEWPOST_LOG = 'silent';
  const anywhere = { host: '127.0.0.1', port: 0 };
  const hub = await startHub({ data, farm, open: false, http: anywhere, mqtt: anywhere });
  onTestFinished(() => hub.close());
  expect(hub.claimCode).toMatch(/^\w{4}(-\w{4}){2}$/);
  await expect(
    connected(hub.mqtt, { username: 'p1', password: 'guess', reconnectPeriod: 0 }),
  ).rejects.toThrow();
  const probe = await connected(hub.mqtt, { username: 'p1', password });
  await expect(probe.subscribeAsync('dewpost/#', { qos: 1 })).rejects.toThrow();
  const lamp = await connected(hub.mqtt, { username: 'lamp', password: lampPassword });
  const heard = new Map<string, string>();
  lamp.on('message', (topic, payload) => heard.set(topic, payload.toString()));
  await lamp.subscribeAsync(['dewpost/alarm/#', 'dewpost/heartbeat', 'dewpost/task'], { qos: 1 });
  await probe.publishAsync('garden/p1/temperature', '20', { qos: 1 });
  await eventually('a heartbeat', () => heard.has('dewpost/heartbeat'));
  expect(JSON.parse(heard.get('dewpost/heartbeat') ?? '')).toMatchObject({
    t: expect.stringMatching(/Z$/),
    evaluatedAt: expect.stringMatching(/Z$/),
  });
  expect(JSON.parse(heard.get('dewpost/task') ?? '')).toEqual(expect.any(Array));
  const health = contract.health.parse(await (await fetch(`${hub.http}/api/health`)).json());
  expect(health.lastReadingAt).not.toBeNull();
  expect((await fetch(`${hub.http}/api/today`)).status).toBe(401);
});
