import { setTimeout as wait } from 'node:timers/promises';
import { expect, onTestFinished, test } from 'vitest';
import { connectExisting, type ExistingOptions, HEARTBEAT } from '../../../hub/broker/index.ts';
import { connected, eventually } from './connected.ts';
import { otherBroker } from './otherBroker.ts';

async function hubOn(url: string, options: Partial<ExistingOptions> = {}) {
  const seen: { topic: string; payload: string; again: boolean }[] = [];
  let connections = 0;
  const hub = await connectExisting({
    url,
    filters: ['garden/#'],
    clientId: 'dewpost-test',
    onConnect: () => {
      connections++;
    },
    ...options,
    receive: (message, acknowledge) => {
      const { topic, payload, again } = message;
      seen.push({ topic, payload: Buffer.from(payload).toString(), again });
      if (options.receive) options.receive(message, acknowledge);
      else acknowledge();
    },
  });
  let closed = false;
  const close = async () => {
    if (!closed) await hub.close();
    closed = true;
  };
  onTestFinished(close);
  return { ...hub, close, seen, connections: () => connections };
}

test('readings of the other broker come in, with text as it was sent', async () => {
  const { url } = await otherBroker();
  const hub = await hubOn(url);
  const probe = await connected(url);
  await probe.publishAsync('garden/p1/temperature', '20.5', { qos: 1 });
  await eventually('a reading', () => hub.seen.length === 1);
  expect(hub.seen[0]).toEqual({ topic: 'garden/p1/temperature', payload: '20.5', again: false });
  expect([hub.connected(), hub.connections()]).toEqual([true, 1]);
});

test('what could not be kept is not acknowledged, and the broker delivers it again', async () => {
  const { url } = await otherBroker();
  let failures = 1;
  const hub = await hubOn(url, {
    receive: (_message, acknowledge) => acknowledge(failures-- > 0 ? new Error('disk full') : null),
  });
  const probe = await connected(url);
  await probe.publishAsync('garden/p1/temperature', '20', { qos: 1 });
  await eventually('it again', () => hub.seen.length === 2);
  expect(hub.seen[1]).toMatchObject({ topic: 'garden/p1/temperature', payload: '20' });
  expect(hub.connections()).toBe(2);
  await wait(300);
  expect(hub.seen).toHaveLength(2);
});

test('what was sent while the hub was away is waiting for it', async () => {
  const { url } = await otherBroker();
  const before = await hubOn(url);
  await before.close();
  const probe = await connected(url);
  for (const value of ['1', '2', '3'])
    await probe.publishAsync('garden/p1/light', value, { qos: 1 });
  const after = await hubOn(url);
  await eventually('three readings', () => after.seen.length === 3);
  expect(after.seen.map(({ payload }) => payload)).toEqual(['1', '2', '3']);
});

test('after the link was lost the hub comes back by itself and says so', async () => {
  const { url, drop } = await otherBroker();
  const hub = await hubOn(url);
  drop();
  await eventually('the loss', () => !hub.connected());
  await hub.publish(HEARTBEAT, 'lost', { retain: true });
  await eventually('the link', () => hub.connected());
  expect(hub.connections()).toBe(2);
  const probe = await connected(url);
  await probe.publishAsync('garden/p1/temperature', '20', { qos: 1 });
  await eventually('a reading', () => hub.seen.length === 1);
});

test('the hub’s own topics do not come back in as messages', async () => {
  const { url } = await otherBroker();
  const hub = await hubOn(url, { filters: ['#'] });
  await hub.publish('dewpost/task', '[]', { retain: true });
  const probe = await connected(url);
  await probe.publishAsync('garden/p1/temperature', '20', { qos: 1 });
  await eventually('a reading', () => hub.seen.length >= 1);
  expect(hub.seen.map(({ topic }) => topic)).toEqual(['garden/p1/temperature']);
});

test('a hub that vanishes leaves its last will; one that leaves says so itself', async () => {
  const { url, drop } = await otherBroker();
  const listener = await connected(url, { clientId: 'listener' });
  const heard: string[] = [];
  listener.on('message', (_topic, payload) => heard.push(payload.toString()));
  await listener.subscribeAsync(HEARTBEAT, { qos: 1 });
  const hub = await hubOn(url);
  await hub.publish(HEARTBEAT, '{"t":1}', { retain: true });
  await eventually('the beat', () => heard.includes('{"t":1}'));
  drop();
  await eventually('the will', () => heard.includes('{"gone":true}'));
  await eventually('the link', () => hub.connected() && listener.connected);
  heard.length = 0;
  await hub.close();
  const late = await connected(url);
  const last = new Promise<string>((resolve) =>
    late.on('message', (_topic, payload) => resolve(payload.toString())),
  );
  await late.subscribeAsync(HEARTBEAT, { qos: 1 });
  expect(await last).toBe('{"gone":true}');
});

test('a broker that refuses the subscription is not called connected', async () => {
  const { url, aedes } = await otherBroker();
  aedes.authorizeSubscribe = (_client, _subscription, done) => done(null, null);
  const hub = await hubOn(url);
  expect(hub.connected()).toBe(false);
});

test('the address shown holds no password', async () => {
  const { url } = await otherBroker();
  const hub = await hubOn(url.replace('mqtt://', 'mqtt://ann:secret@'));
  expect(hub.address).toContain('127.0.0.1');
  expect(hub.address).not.toContain('secret');
});
