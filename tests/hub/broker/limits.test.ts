import { setTimeout as wait } from 'node:timers/promises';
import type { MqttClient } from 'mqtt';
import { expect, onTestFinished, test } from 'vitest';
import { type Arrived, type EmbeddedOptions, startEmbedded } from '../../../hub/broker/index.ts';
import { LIMITS } from '../../../hub/broker/limits.ts';
import { connected } from './connected.ts';
import { connectPacket, publishPacket, rawClient, subscribePacket } from './rawClient.ts';

const WITHIN = 20_000; // ms; machines that do other work too are slow

async function limited(options: Partial<EmbeddedOptions> = {}) {
  const arrived: Arrived[] = [];
  const refused: { source: string; reason: string; sentence: string }[] = [];
  const broker = await startEmbedded({
    host: '127.0.0.1',
    port: 0,
    mayConnect: async () => true,
    mayPublish: () => true,
    receive: (message, acknowledge) => {
      arrived.push(message);
      acknowledge();
    },
    refuse: (source, reason, sentence) => refused.push({ source, reason, sentence }),
    ...options,
  });
  onTestFinished(() => broker.close());
  return { ...broker, arrived, refused };
}
const soon = async (what: string, is: () => boolean) => {
  for (const until = Date.now() + WITHIN; !is(); await wait(20))
    if (Date.now() > until) throw new Error(`Expected ${what} in time, got nothing of it`);
};
const ended = (socket: { readonly destroyed: boolean; readonly readableEnded: boolean }) =>
  socket.destroyed || socket.readableEnded;

test.for([0, 1] as const)(
  'a message that is too long at QoS %i is told about, and its sender goes on',
  async (qos) => {
    const { address, arrived, refused } = await limited();
    const client = await connected(address, { reconnectPeriod: 0 });
    const long = Buffer.alloc(LIMITS.payload + 1, 'x');
    await client.publishAsync('garden/p1/temperature', long, { qos });
    await client.publishAsync('garden/p1/temperature', long.subarray(1), { qos });
    await client.publishAsync('garden/p1/temperature', '20', { qos: 1 });
    expect(arrived.map(({ payload }) => payload.length)).toEqual([LIMITS.payload, 2]);
    expect(refused).toEqual([
      {
        source: 'p1',
        reason: 'too-long',
        sentence: `Expected a shorter message on garden/p1/temperature, got ${long.length} bytes`,
      },
    ]);
    expect(client.connected).toBe(true);
  },
);

test('megabytes at a time are let fall, and the memory with them', async () => {
  const { address, refused } = await limited();
  const client = await connected(address, { reconnectPeriod: 0 });
  const before = process.memoryUsage().arrayBuffers;
  for (let i = 0; i < 20; i++)
    await client.publishAsync('garden/p1/light', Buffer.alloc(2 ** 20), { qos: 1 });
  expect(refused).toHaveLength(20);
  expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(64 * 2 ** 20);
});

test('who sends faster than is bearable waits, loses nothing, and keeps nobody else waiting', async () => {
  const { address, arrived } = await limited({ limits: { perSecond: 50, atOnce: 20 } });
  const flood = await connected(address, { clientId: 'flood' });
  const other = await connected(address, { clientId: 'other' });
  const COUNT = 120;
  const begun = performance.now();
  const sent = Promise.all(
    Array.from({ length: COUNT }, (_, i) =>
      flood.publishAsync('garden/flood/light', String(i), { qos: i % 2 === 0 ? 1 : 0 }),
    ),
  );
  await other.publishAsync('garden/other/light', '1', { qos: 1 });
  const before = arrived.filter(({ topic }) => topic === 'garden/flood/light').length;
  expect(before).toBeLessThan(COUNT); // the other's came through in the middle of it
  await sent;
  await soon('all of it', () => arrived.length === COUNT + 1);
  // 20 at once, then 50 a second: 100 more take about two seconds, and never much less.
  expect(performance.now() - begun).toBeGreaterThan(1500);
  const values = arrived
    .filter(({ topic }) => topic.includes('flood'))
    .map(({ payload }) => payload);
  expect(values.map((bytes) => Number(Buffer.from(bytes).toString()))).toEqual(
    Array.from({ length: COUNT }, (_, i) => i),
  );
});

test('what was sent before its sender left still comes through, however slowly', async () => {
  const { address, arrived } = await limited({ limits: { perSecond: 50, atOnce: 5 } });
  const socket = await rawClient(address);
  socket.write(connectPacket('brief'));
  await soon('an answer', () => socket.got().length >= 4);
  socket.end(
    Buffer.concat(Array.from({ length: 30 }, (_, i) => publishPacket('garden/p1/light', `${i}`))),
  );
  await soon('all of it', () => arrived.length === 30);
});

test('connections that never say who they are make room for those that do', async () => {
  const { address } = await limited({ limits: { waiting: 10, connectWithin: 60_000 } });
  const silent = await Promise.all(Array.from({ length: 40 }, () => rawClient(address)));
  const probe = await connected(address, { reconnectPeriod: 0 });
  await probe.publishAsync('garden/p1/light', '1', { qos: 1 });
  await soon('the oldest to be gone', () => silent.filter((one) => !ended(one)).length <= 10);
  expect(silent.slice(0, 25).every(ended)).toBe(true);
});

test('one that connects and says nothing, or half a word, is let go in time', async () => {
  const { address, refused } = await limited({
    limits: { connectWithin: 300, packetWithin: 300 },
  });
  const silent = await rawClient(address);
  const half = await rawClient(address);
  half.write(connectPacket('half').subarray(0, 7));
  const slow = await rawClient(address);
  slow.write(connectPacket('slow'));
  await soon('an answer', () => slow.got().length >= 4);
  slow.write(publishPacket('garden/p1/light', '12345').subarray(0, 9));
  const quiet = await connected(address, { keepalive: 0, reconnectPeriod: 0 });
  await soon('all three to be gone', () => [silent, half, slow].every(ended));
  expect(quiet.connected).toBe(true); // nothing to say is no fault
  await quiet.publishAsync('garden/p1/light', '1', { qos: 1 });
  expect(refused.map(({ reason }) => reason)).toEqual(['bad-packet', 'bad-packet', 'bad-packet']);
  for (const { sentence } of refused) expect(sentence).toMatch(/^Expected .* within 0.3 s, got/);
});

test('a client that promised to be heard of and is not is let go (MQTT 3.1.1, section 3.1.2.10)', async () => {
  const { address } = await limited();
  const socket = await rawClient(address);
  socket.write(connectPacket('gone', undefined, '', 1));
  await soon('an answer', () => socket.got().length >= 4);
  await soon('its end', () => ended(socket));
});

test.for([
  ['bytes of another protocol', Buffer.from('GET / HTTP/1.1\r\n\r\n')],
  ['a PUBLISH before a CONNECT', publishPacket('garden/p1/light', '1')],
  ['a CONNECT of 200 MB', Buffer.from([0x10, 0x80, 0x80, 0x80, 0x60])],
  ['a length that never ends', Buffer.from([0x10, 0xff, 0xff, 0xff, 0xff, 0xff])],
] as const)('%s on the socket are refused at once and counted', async ([, bytes]) => {
  const { address, refused } = await limited();
  const socket = await rawClient(address);
  socket.write(bytes);
  await soon('its end', () => ended(socket));
  await soon('a word about it', () => refused.length === 1);
  expect(refused[0]).toMatchObject({ source: '127.0.0.1', reason: 'bad-packet' });
  expect(refused[0]?.sentence).toMatch(/^Expected .*, got /);
});

test('there is room for so many clients, and under one name the oldest makes room', async () => {
  const { address } = await limited({ limits: { clients: 5, perUser: 2 } });
  const named = (username: string, clientId: string) =>
    connected(address, { username, password: 'x', clientId, reconnectPeriod: 0 });
  const first = await named('p1', 'a');
  await named('p1', 'b');
  const gone = new Promise<void>((resolve) => first.once('close', () => resolve()));
  const third = await named('p1', 'c');
  await gone;
  expect(third.connected).toBe(true);
  for (const i of [1, 2, 3]) await named(`q${i}`, `q${i}`);
  await expect(named('q4', 'q4')).rejects.toMatchObject({ code: 3 });
});

test('nobody is put out by another who takes its client id', async () => {
  const { address, refused } = await limited();
  const as = (username: string) =>
    connected(address, { username, password: 'x', clientId: 'mine', reconnectPeriod: 0 });
  const mine = await as('p1');
  // MQTT 3.1.1, table 3.1: 2 is "identifier rejected".
  await expect(as('p2')).rejects.toMatchObject({ code: 2 });
  expect(mine.connected).toBe(true);
  expect(refused).toMatchObject([{ source: 'p2', reason: 'sign-in' }]);
  const closed = new Promise<void>((resolve) => mine.once('close', () => resolve()));
  const again = await as('p1'); // the same probe, back before its old link was found dead
  await closed;
  expect(again.connected).toBe(true);
  await again.endAsync();
  let other: MqttClient | undefined;
  for (const until = Date.now() + WITHIN; !other && Date.now() < until; await wait(50))
    other = await as('p2').catch(() => undefined);
  expect(other?.connected).toBe(true); // whoever left it leaves it free
});

test('a client has so many topics and no more, even in one packet', async () => {
  const { address, refused } = await limited({ limits: { filters: 10 } });
  const socket = await rawClient(address);
  socket.write(connectPacket('greedy'));
  await soon('an answer', () => socket.got().length >= 4);
  socket.write(subscribePacket(Array.from({ length: 300 }, (_, i) => `a/${i}`)));
  await soon('a SUBACK', () => socket.got().length >= 4 + 3 + 302);
  const granted = [...socket.got().subarray(-300)];
  expect(granted.filter((code) => code !== 0x80)).toHaveLength(10);
  expect(refused).toHaveLength(290);
});

test('what clients leave behind is nothing: no retained message, no session', async () => {
  const { address } = await limited();
  const reader = { clientId: 'away', clean: false } as const;
  const away = await connected(address, reader);
  await away.subscribeAsync('garden/#', { qos: 1 });
  await away.endAsync();
  const probe = await connected(address);
  for (let i = 0; i < 50; i++)
    await probe.publishAsync(`garden/p${i}/light`, '1', { qos: 1, retain: true });
  const heard: string[] = [];
  const listen = (client: MqttClient) => client.on('message', (topic) => heard.push(topic));
  listen(await connected(address, { ...reader, manualConnect: false }));
  const late = await connected(address);
  listen(late);
  await late.subscribeAsync('garden/#', { qos: 1 });
  await wait(300);
  expect(heard).toEqual([]);
});

test('a reader that stops reading is let go, and the others hear on', async () => {
  const { address, publish } = await limited();
  const stuck = await rawClient(address);
  stuck.write(connectPacket('stuck'));
  await soon('an answer', () => stuck.got().length >= 4);
  stuck.write(subscribePacket(['dewpost/#']));
  await soon('a SUBACK', () => stuck.got().length >= 9);
  stuck.pause();
  const reader = await connected(address);
  let heard = 0;
  reader.on('message', () => heard++);
  await reader.subscribeAsync('dewpost/#');
  const big = 'x'.repeat(100_000);
  for (let i = 0; i < 200; i++) await publish('dewpost/task', big);
  await soon('all of it', () => heard === 200);
  stuck.resume();
  await soon('its end', () => ended(stuck));
});
