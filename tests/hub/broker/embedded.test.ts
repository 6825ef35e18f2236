import { setTimeout as wait } from 'node:timers/promises';
import { expect, onTestFinished, test } from 'vitest';
import {
  type Acknowledge,
  type Arrived,
  type EmbeddedOptions,
  HEARTBEAT,
  startEmbedded,
} from '../../../hub/broker/index.ts';
import { connected, eventually } from './connected.ts';

async function broker(options: Partial<EmbeddedOptions> = {}) {
  const arrived: Arrived[] = [];
  const held: Acknowledge[] = [];
  const started = await startEmbedded({
    host: '127.0.0.1',
    port: 0,
    mayConnect: async () => true,
    mayPublish: () => true,
    receive: (message, acknowledge) => {
      arrived.push(message);
      held.push(acknowledge);
    },
    ...options,
  });
  onTestFinished(() => started.close());
  return { ...started, arrived, held };
}
const straight: EmbeddedOptions['receive'] = (_message, acknowledge) => acknowledge();

test('a probe hears nothing until its reading is kept, and then at once', async () => {
  const { address, arrived, held } = await broker();
  const client = await connected(address);
  let acknowledged = false;
  const sent = client.publishAsync('garden/p1/temperature', '20', { qos: 1 }).then(() => {
    acknowledged = true;
  });
  await eventually('a message', () => held.length === 1);
  await wait(200);
  expect(acknowledged).toBe(false);
  held[0]?.();
  await sent;
  expect(acknowledged).toBe(true);
  expect(arrived).toMatchObject([{ topic: 'garden/p1/temperature', again: false }]);
  expect(Buffer.from(arrived[0]?.payload ?? []).toString()).toBe('20');
});

test('messages are acknowledged by themselves, not one after another', async () => {
  const { address, held } = await broker();
  const client = await connected(address);
  const done: number[] = [];
  for (const i of [0, 1, 2])
    void client.publishAsync('garden/p1/light', String(i), { qos: 1 }).then(() => done.push(i));
  await eventually('three messages', () => held.length === 3);
  for (const acknowledge of held) acknowledge(null);
  await eventually('three acknowledgements', () => done.length === 3);
  expect(done).toEqual([0, 1, 2]);
});

test('what could not be kept is not acknowledged, and the probe sends it again', async () => {
  let failures = 2;
  const seen: string[] = [];
  const { address } = await broker({
    receive: ({ topic }, acknowledge) => {
      seen.push(topic);
      acknowledge(failures-- > 0 ? new Error('disk full') : null);
    },
  });
  const client = await connected(address, { clientId: 'p1', clean: false });
  await client.publishAsync('garden/p1/temperature', '20', { qos: 1 });
  expect(seen).toEqual(Array(3).fill('garden/p1/temperature'));
});

test('a receiver that breaks down does not end the broker', async () => {
  let breaks = true;
  const { address } = await broker({
    receive: (_message, acknowledge) => {
      if (breaks) {
        breaks = false;
        throw new Error('broken');
      }
      acknowledge();
    },
  });
  const client = await connected(address);
  await client.publishAsync('garden/p1/temperature', '20', { qos: 1 });
  expect(breaks).toBe(false);
});

test('a wrong name or password is refused as such', async () => {
  const tried: [string | undefined, string | undefined][] = [];
  const { address } = await broker({
    mayConnect: async (user, password) => {
      tried.push([user, password && Buffer.from(password).toString()]);
      return user === 'p1' && Buffer.from(password ?? []).toString() === 'right';
    },
  });
  const attempt = (username?: string, password?: string) =>
    connected(address, {
      reconnectPeriod: 0,
      ...(username ? { username } : {}),
      ...(password ? { password } : {}),
    });
  // MQTT 3.1.1, table 3.1: 4 is "bad user name or password".
  await expect(attempt('p1', 'wrong')).rejects.toMatchObject({ code: 4 });
  await expect(attempt('p2', 'right')).rejects.toMatchObject({ code: 4 });
  await expect(attempt()).rejects.toMatchObject({ code: 4 });
  expect((await attempt('p1', 'right')).connected).toBe(true);
  expect(tried[2]).toEqual([undefined, undefined]);
});

test('a door-keeper that breaks down lets nobody in', async () => {
  const { address } = await broker({
    mayConnect: async () => {
      throw new Error('store closed');
    },
  });
  await expect(connected(address, { reconnectPeriod: 0 })).rejects.toThrow();
});

test('a probe publishes where it may, under its own name', async () => {
  const seen: string[] = [];
  const { address } = await broker({
    mayPublish: (user, topic) => topic.startsWith(`garden/${user}/`),
    receive: ({ topic }, acknowledge) => {
      seen.push(topic);
      acknowledge();
    },
  });
  const client = await connected(address, { username: 'p1', password: 'x', reconnectPeriod: 0 });
  await client.publishAsync('garden/p1/temperature', '20', { qos: 1 });
  const closed = new Promise<void>((resolve) => client.once('close', () => resolve()));
  client.publish('garden/p2/temperature', '99', { qos: 1 });
  await closed;
  expect(seen).toEqual(['garden/p1/temperature']);
});

test.for(['dewpost/alarm', HEARTBEAT, 'dewpost/task', '$SYS/x', '$anything'])(
  'nobody else publishes on %s',
  async (topic) => {
    const { address, arrived } = await broker();
    const listener = await connected(address);
    const heard: string[] = [];
    listener.on('message', (on) => heard.push(on));
    await listener.subscribeAsync('dewpost/#', { qos: 1 });
    await expect(listener.subscribeAsync(['$SYS/x', '$anything'], { qos: 1 })).rejects.toThrow();
    heard.length = 0;
    const client = await connected(address, { reconnectPeriod: 0 });
    const closed = new Promise<void>((resolve) => client.once('close', () => resolve()));
    client.publish(topic, 'false', { qos: 1, retain: true });
    await closed;
    await wait(50);
    expect(arrived).toEqual([]);
    expect(heard).toEqual([]);
  },
);

test('a last will is taken in like any other message', async () => {
  const { address, arrived } = await broker({ receive: straight });
  const seen = arrived;
  const { address: other, arrived: wills } = await broker();
  expect(other).not.toBe(address);
  const client = await connected(other, {
    reconnectPeriod: 0,
    will: { topic: 'garden/p1/battery', payload: Buffer.from('1'), qos: 1, retain: false },
  });
  client.stream.destroy();
  await eventually('the will', () => wills.length === 1);
  expect(wills[0]?.topic).toBe('garden/p1/battery');
  expect(seen).toEqual([]);
});

test('a last will on a topic of the hub is not passed on', async () => {
  const { address } = await broker({ receive: straight });
  const listener = await connected(address);
  const heard: string[] = [];
  listener.on('message', (topic, payload) => heard.push(`${topic} ${payload}`));
  await listener.subscribeAsync('#', { qos: 1 });
  const vanish = async (topic: string) => {
    const client = await connected(address, {
      reconnectPeriod: 0,
      will: { topic, payload: Buffer.from('{"gone":true}'), qos: 1, retain: true },
    });
    client.stream.destroy();
  };
  await vanish(HEARTBEAT);
  await vanish('garden/p1/battery');
  await eventually('the other will', () => heard.some((one) => one.startsWith('garden/')));
  expect(heard.filter((one) => one.startsWith('dewpost/'))).toEqual([]);
});

test('the hub’s own words are retained for those who come later', async () => {
  const { address, publish } = await broker({ receive: straight });
  await publish(HEARTBEAT, '{"t":1}', { retain: true });
  const listener = await connected(address, { manualConnect: false });
  const heard = new Promise<string>((resolve) => {
    listener.on('message', (topic, payload, { retain }) =>
      resolve(`${topic} ${payload} ${retain}`),
    );
  });
  await listener.subscribeAsync('dewpost/#', { qos: 1 });
  expect(await heard).toBe(`${HEARTBEAT} {"t":1} true`);
});

test('an address that is taken is refused, and a closed broker lets go of everybody', async () => {
  const first = await broker({ receive: straight });
  const port = Number(new URL(first.address).port);
  await expect(broker({ port })).rejects.toThrow(/EADDRINUSE/);
  const client = await connected(first.address, { reconnectPeriod: 0 });
  const closed = new Promise<void>((resolve) => client.once('close', () => resolve()));
  await first.close();
  await closed;
  expect(first.connected()).toBe(false);
});
