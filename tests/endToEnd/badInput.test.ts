import { connect as connectSocket } from 'node:net';
import { connectAsync, type MqttClient } from 'mqtt';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Health, Probe, RefusedMessages } from '../../hub/contract/index.ts';
import { badFromProbe, badFromStrangers } from './badMessages.ts';
import { hasChromium, needsChromium, openBrowser } from './browser.ts';
import { gardenFile } from './gardenFile.ts';
import { clockFrom, farmNow, type HubProcess, startHub } from './hubProcess.ts';
import { tempFolder } from './processes.ts';
import { seriesOf } from './seriesOf.ts';

const MINUTE = 60_000;
const START = Date.UTC(2026, 4, 12, 10);
const clock = clockFrom(START, 1);
const bad = badFromProbe(START);

let hub: HubProcess;
let client: MqttClient;
const send = (topic: string, payload: string | Buffer) =>
  client.publishAsync(topic, payload, { qos: 1 });
const good: (readonly [number, number])[] = [];
/** A reading that nothing is wrong with; each a little later and warmer than the one before. */
async function sendGood() {
  const t = START - 5 * 60 * MINUTE + good.length * 2 * MINUTE;
  const value = 12 + good.length / 10;
  await send('garden/bloom/temperature', JSON.stringify({ v: value, t }));
  good.push([t, value]);
}

beforeAll(async () => {
  const data = tempFolder();
  hub = await startHub({ data, farm: gardenFile(data), open: true, clock });
  client = await connectAsync(`mqtt://127.0.0.1:${hub.ports.mqtt}`, { reconnectPeriod: 0 });
  for (const { topic, payload } of bad) {
    await sendGood();
    await send(topic, payload);
  }
  for (const { topic, payload } of badFromStrangers) await send(topic, payload);
  await sendGood();
}, 90_000);
afterAll(async () => {
  await client?.endAsync(true);
});

test('the hub lives, and the connection that bad messages came over with it', async () => {
  expect(client.connected).toBe(true);
  expect((await hub.get<Health>('/api/health')).status).toBe('ok');
  expect(hub.log()).not.toMatch(/"level":50|Error/);
});

test('good readings between bad ones are all kept', async () => {
  const points = await seriesOf(hub, 'south-patch', 'temperature', farmNow(clock));
  expect(points).toEqual(good);
});

test('each bad message of a known probe is counted under its reason', async () => {
  const expected: Record<string, number> = {};
  for (const { reason } of bad) expected[reason] = (expected[reason] ?? 0) + 1;
  const leaf = (await hub.get<Probe[]>('/api/probes')).find(({ id }) => id === 'leaf');
  const counted = Object.fromEntries(
    leaf?.refused.map(({ reason, count }) => [reason, count]) ?? [],
  );
  expect(counted).toEqual(expected);
  for (const { words, last, lastAt } of leaf?.refused ?? []) {
    expect(words).toMatch(/^[A-Z].* /);
    expect(last).toMatch(/^Expected .+/);
    expect(last.length).toBeLessThan(400);
    expect(Date.parse(lastAt)).toBeGreaterThanOrEqual(START);
  }
});

test('no bad message of a known probe left a reading that is used', async () => {
  const leaf = (await hub.get<Probe[]>('/api/probes')).find(({ id }) => id === 'leaf');
  const used = leaf?.latest.filter(({ flag }) => flag === null);
  expect(used).toEqual([]);
  expect(await seriesOf(hub, 'long-house', 'temperature', farmNow(clock))).toEqual([]);
});

test('bad messages of strangers are told under the name or topic they came with', async () => {
  const refused = await hub.get<RefusedMessages[]>('/api/refused');
  const told = refused.map(({ source, reason, count }) => ({ source, reason, count }));
  const expected = badFromStrangers.map(({ source, reason }) => ({ source, reason, count: 1 }));
  const bySource = (a: { source: string }, b: { source: string }) => (a.source < b.source ? -1 : 1);
  expect(told.sort(bySource)).toEqual(expected.sort(bySource));
  const probes = await hub.get<Probe[]>('/api/probes');
  expect(probes.map(({ id }) => id)).not.toContain('ghost'); // only readings make a probe
});

test('a jump waits for the next reading, and one that is confirmed counts', async () => {
  const t0 = START - 40 * MINUTE;
  const values = [10, 10.2, 31, 10.3, 10.4, 18, 18.2];
  for (const [i, v] of values.entries())
    await send('garden/mast/temperature', JSON.stringify({ v, t: t0 + i * 5 * MINUTE }));
  const points = await seriesOf(hub, 'outside', 'temperature', farmNow(clock));
  expect(points.map(([, value]) => value)).toEqual([10, 10.2, 10.3, 10.4, 18, 18.2]);
});

// MQTT 3.1.1: the packets below break the standard, or stop half way.
test.for([
  ['bytes of no protocol', Buffer.from('GET / HTTP/1.1\r\nHost: hub\r\n\r\n')],
  ['a CONNECT cut off half way', Buffer.from([0x10, 0x20, 0x00, 0x04, 0x4d, 0x51])],
  ['a PUBLISH before any CONNECT', Buffer.from([0x30, 0x05, 0x00, 0x01, 0x61, 0x31, 0x32])],
  ['a length that never ends', Buffer.from([0x10, 0xff, 0xff, 0xff, 0xff, 0xff])],
  ['zeros', Buffer.alloc(70_000)],
] as const)('%s on the socket harm nobody else', async ([, bytes]) => {
  const socket = connectSocket(hub.ports.mqtt, '127.0.0.1');
  socket.on('error', () => {});
  await new Promise<void>((resolve) => socket.once('connect', () => resolve()));
  await new Promise<void>((resolve) => socket.write(bytes, () => resolve()));
  await sendGood(); // acknowledged while the other still hangs there
  socket.destroy();
  expect((await hub.get<Health>('/api/health')).status).toBe('ok');
  const points = await seriesOf(hub, 'south-patch', 'temperature', farmNow(clock));
  expect(points).toEqual(good);
});

test.for([
  ['/api/tasks/no-such/answer', { answer: 'done' }, 404],
  ['/api/tasks/no-such/answer', { answer: 'maybe' }, 400],
  ['/api/probes/leaf/place', { place: 'attic', spot: 'air' }, 400],
  ['/api/probes/nobody/place', { place: 'outside', spot: 'air' }, 404],
  ['/api/probes/leaf/place', [], 400],
] as const)('%s with %j is refused in one sentence', async ([path, command, status]) => {
  const response = await hub.ask(path, command);
  expect(response.status).toBe(status);
  expect(((await response.json()) as { error: string }).error).toMatch(/^Expected .+, got .+/);
});

test.skipIf(!hasChromium)(
  `the Probes page tells what was refused, of probes and of strangers${needsChromium}`,
  async () => {
    const { page, complaints, close } = await openBrowser({ width: 360 });
    await page.goto(`${hub.page}/probes`);
    const card = page.locator('article', { has: page.getByRole('heading', { name: /^leaf/ }) });
    const summary = card.getByText(`${bad.length} messages refused or doubted in 24 hours`);
    await summary.click();
    const lines = card.locator('details li');
    expect(await lines.count()).toBe(new Set(bad.map(({ reason }) => reason)).size);
    await card.getByText('The unit does not belong to the quantity').waitFor();
    expect(await card.getByText('3 × The unit does not belong').isVisible()).toBe(true);
    const strangers = page.locator('section', {
      has: page.getByRole('heading', { name: 'Messages from nobody the hub knows' }),
    });
    for (const text of ['gardn/leaf:', 'ghost:', 'garden/böse:'])
      await strangers.getByText(text, { exact: true }).waitFor();
    expect(complaints).toEqual([]);
    await close();
  },
  60_000,
);
