import type { AddressInfo } from 'node:net';
import { createServer } from 'node:net';
import { setTimeout as pause } from 'node:timers/promises';
import { Aedes } from 'aedes';
import { expect, test } from 'vitest';
import { historyReadings } from '../../simulators/historyLines.ts';
import { startLiveProbes } from '../../simulators/liveProbes.ts';
import { scenario } from '../../simulators/scenario.ts';
import { clockText, createSimulatedClock, parseClock } from '../../simulators/simulatedClock.ts';

type Heard = { client: string; topic: string; payload: string; qos: number };

async function startBroker(heard: Heard[]) {
  const aedes = await Aedes.createBroker();
  aedes.authorizePublish = (client, { topic, payload, qos }, done) => {
    heard.push({ client: client?.id ?? '', topic, payload: String(payload), qos });
    done(null);
  };
  const server = createServer(aedes.handle);
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const { port } = server.address() as AddressInfo;
  const stop = async () => {
    await new Promise<void>((closed) => aedes.close(closed));
    server.close();
  };
  return { broker: `mqtt://127.0.0.1:${port}`, stop, connected: () => aedes.connectedClients };
}

async function until(what: () => boolean): Promise<void> {
  const giveUp = Date.now() + 20_000;
  while (!what() && Date.now() < giveUp) await pause(50);
}

const MINUTE = 60_000;
const { start, seed, probes } = scenario;

test('live probes speak over a real broker, one socket each, at their own pace', async () => {
  const heard: Heard[] = [];
  const { broker, stop, connected } = await startBroker(heard);
  const clock = createSimulatedClock(start, Date.now(), 600);
  const live = startLiveProbes(scenario, { broker, seed, clock });
  const from = (id: string) => heard.filter(({ client }) => client === id);
  const speaking = probes.filter(({ id }) => id !== 'sun-ridge'); // silent in the story
  await until(() => speaking.every(({ id }) => from(id).length >= 2));
  const [sockets, passed] = [connected(), clock.now() - start];
  await live.stop();
  await until(() => connected() === 0);
  const left = connected();
  await stop();

  expect(sockets).toBe(probes.length);
  expect(left).toBe(0);
  expect(heard.every(({ qos }) => qos === 1)).toBe(true);
  expect(from('sun-ridge')).toEqual([]);

  const [pack] = from('long-canopy');
  expect(pack?.topic).toBe('garden/long-canopy');
  const [entry] = JSON.parse(pack?.payload ?? '[]');
  expect(entry).toMatchObject({ bn: 'long-canopy:', n: 'temperature', u: 'Cel' });
  expect(Math.abs(entry.bt * 1000 - start)).toBeLessThan(10 * MINUTE);
  expect(from('far-flower').every(({ payload }) => Number.isFinite(Number(payload)))).toBe(true);
  expect(from('mast').every(({ topic }) => topic === 'coast/mast/report')).toBe(true);

  // Each entry of the pack has a quantity; temperature comes once in five minutes.
  const told = from('long-canopy').flatMap(({ payload }) => JSON.parse(payload) as { n: string }[]);
  const temperatures = told.filter(({ n }) => n === 'temperature').length;
  expect(temperatures).toBeLessThanOrEqual(passed / (5 * MINUTE) + 2);
});

test('the first live value follows on from the last of history', async () => {
  const heard: Heard[] = [];
  const { broker, stop } = await startBroker(heard);
  const clock = createSimulatedClock(start, Date.now(), 600);
  const live = startLiveProbes(scenario, { broker, seed, clock });
  await until(() => heard.some(({ client }) => client === 'cool-product'));
  await live.stop();
  await stop();
  const last = [...historyReadings(scenario, { from: start - 30 * MINUTE, to: start, seed })]
    .flat()
    .filter(({ probe, quantity }) => probe === 'cool-product' && quantity === 'temperature')
    .at(-1);
  const first = heard.find(({ client }) => client === 'cool-product');
  const [entry] = JSON.parse(first?.payload ?? '[]');
  const step = entry.t * 1000 - (last?.t ?? 0);
  expect(step).toBeGreaterThan(0);
  expect(step).toBeLessThanOrEqual(10 * MINUTE);
  expect(Math.abs(entry.v - (last?.value ?? 0))).toBeLessThan(0.5); // K: 0.7 K/h and noise
});

test('a clock read from text runs as the one it was written from', () => {
  const clock = createSimulatedClock(start, 1_700_000_000_000, 60);
  const { start: begins, real, speed } = parseClock(clockText(clock));
  expect({ begins, real, speed }).toEqual({ begins: start, real: 1_700_000_000_000, speed: 60 });
  expect(() => parseClock('yesterday/1/1')).toThrow('Expected --clock as START_ISO/REAL_MS/SPEED');
});
