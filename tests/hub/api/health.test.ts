import { rmSync } from 'node:fs';
import { expect, test } from 'vitest';
import * as contract from '../../../hub/contract/index.ts';
import { MINUTE, servedHub } from '../smallFarm.ts';

const T = Date.UTC(2026, 4, 10, 9);

async function askedHub(options: Parameters<typeof servedHub>[0] = {}) {
  const hub = await servedHub({ now: T, ...options });
  const health = async () => {
    const reply = await hub.app.inject({ url: '/api/health' });
    const body = contract.health.parse(reply.json());
    return [reply.statusCode, body.status];
  };
  return { ...hub, health };
}

test('a hub that works answers 200; one that has not looked for a quarter of an hour, 503', async () => {
  const { health, clock, core, send } = await askedHub();
  send('p1', 'temperature', T, 20);
  core.look();
  expect(await health()).toEqual([200, 'ok']);
  clock.set(T + 15 * MINUTE);
  expect(await health()).toEqual([200, 'ok']);
  clock.set(T + 15 * MINUTE + 1);
  expect(await health()).toEqual([503, 'failing']);
  core.look();
  expect(await health()).toEqual([200, 'ok']);
});

test('a hub whose store was taken away does not work, whatever still is in its memory', async () => {
  const { health, core, path } = await askedHub();
  core.look();
  expect(await health()).toEqual([200, 'no-readings']);
  rmSync(path);
  expect(await health()).toEqual([503, 'failing']);
});

test('a hub whose store cannot be asked does not work', async () => {
  const { health, core, store } = await askedHub();
  core.look();
  store.close();
  expect(await health()).toEqual([503, 'failing']);
});

test('a broker that is away is for somebody to see to; a restart would not help', async () => {
  const { health, core, parts } = await askedHub();
  core.look();
  Object.assign(parts, { brokerConnected: () => false });
  expect(await health()).toEqual([200, 'degraded']);
});

test('a disk that is nearly full is for somebody to see to', async () => {
  const { health, core, store } = await askedHub();
  core.look();
  Object.assign(store, { size: () => ({ bytes: 1e6, freeBytes: 1e6 }) });
  expect(await health()).toEqual([200, 'degraded']);
});

test('a hub whose clock was never set waits for it, and is not in fault', async () => {
  const { health } = await askedHub({ isSet: false });
  expect(await health()).toEqual([200, 'no-readings']);
});

test('a demonstration that hurries has half a minute by the wall to look', async () => {
  const { health, core, clock, parts } = await askedHub();
  core.look();
  Object.assign(parts, { clock: { ...clock, speed: 60 } });
  clock.set(T + 29 * MINUTE);
  expect((await health())[0]).toBe(200);
  clock.set(T + 31 * MINUTE);
  expect((await health())[0]).toBe(503);
});
