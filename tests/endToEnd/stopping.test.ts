import { get as httpGet, type IncomingMessage } from 'node:http';
import { connect } from 'node:net';
import { connectAsync } from 'mqtt';
import { expect, test } from 'vitest';
import { gardenFile } from './gardenFile.ts';
import { startHub } from './hubProcess.ts';
import { tempFolder } from './processes.ts';

/** The hub's own promise is two seconds; the rest is for a machine that does much else. */
const WITHIN = 10_000; // ms

const stream = (page: string) =>
  new Promise<IncomingMessage>((resolve, reject) => {
    const asked = httpGet(`${page}/api/events`, { agent: false }, (reply) => {
      reply.on('error', () => {});
      resolve(reply.resume());
    });
    asked.on('error', reject);
  });

test('with open pages, slow requests and probes a hub stops in time, and keeps what it had acknowledged', {
  timeout: 90_000,
}, async () => {
  const data = tempFolder();
  const farm = gardenFile(data);
  const hub = await startHub({ data, farm, open: true });
  const pages = await Promise.all([stream(hub.page), stream(hub.page), stream(hub.page)]);
  const ended = pages.map((page) => new Promise((resolve) => page.on('close', resolve)));
  // One that sends half of a request, and one that does not read what it asked for.
  for (const text of [
    'POST /api/sign-out HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/json\r\nContent-Length: 99\r\n\r\n{',
    'GET /api/openapi.json HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n'.repeat(50),
  ]) {
    const socket = connect(hub.ports.http, '127.0.0.1');
    socket.on('error', () => {});
    await new Promise<void>((resolve) => socket.write(text, () => resolve()));
    socket.pause();
  }
  const probe = await connectAsync(`mqtt://127.0.0.1:${hub.ports.mqtt}`, { reconnectPeriod: 0 });
  await probe.publishAsync('garden/leaf/temperature', '19.5', { qos: 1 });

  const begun = performance.now();
  const { code } = await hub.stop();
  const took = performance.now() - begun;
  expect(code).toBe(0);
  expect(took).toBeLessThan(WITHIN);
  await Promise.all(ended);
  expect(hub.log()).not.toMatch(/"level":[56]0/);
  expect(hub.log()).toContain('"msg":"the hub stops"');
  await probe.endAsync(true);

  const again = await startHub({ data, farm, open: true });
  const [leaf] = (
    await again.get<{ id: string; latest: { value: number }[] }[]>('/api/probes')
  ).filter(({ id }) => id === 'leaf');
  expect(leaf?.latest.map(({ value }) => value)).toEqual([20]); // with its correction of 0.5
  await again.stop();
});
