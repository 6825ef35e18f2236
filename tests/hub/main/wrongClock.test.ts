import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { expect, onTestFinished, test } from 'vitest';
import type { Health } from '../../../hub/contract/index.ts';
import { startHub } from '../../../hub/main/start.ts';
import { connected } from '../broker/connected.ts';
import { jumpingClock } from '../jumpingClock.ts';
import { farmText } from '../smallFarm.ts';
import { tempFolder } from '../tempStore.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const T = Date.UTC(2026, 4, 10, 9);
const WITHIN = 30_000; // ms
const anywhere = { host: '127.0.0.1', port: 0 };

/** The whole hub with its wires and pages, under a clock somebody sets. */
async function wholeHub(start: number) {
  process.env.DEWPOST_LOG = 'silent';
  const folder = tempFolder();
  const farm = join(folder, 'farm.yaml');
  writeFileSync(farm, farmText());
  const clock = jumpingClock(start, true);
  const settings = { data: folder, farm, open: true, http: anywhere, mqtt: anywhere };
  const hub = await startHub(settings, { clock, boot: 'one' });
  onTestFinished(() => hub.close());
  const probe = await connected(hub.mqtt, { reconnectPeriod: 0 });
  const ask = (path: string) => fetch(`${hub.http}${path}`);
  const health = async () => (await (await ask('/api/health')).json()) as Health;
  const until = async (what: string, is: (now: Health) => boolean) => {
    for (const end = Date.now() + WITHIN; ; await wait(100)) {
      const now = await health();
      if (is(now)) return now;
      if (Date.now() > end) throw new Error(`Expected ${what}, got ${JSON.stringify(now)}`);
    }
  };
  const points = async () => {
    const [from, to] = [T - 24 * HOUR, T + 24 * HOUR].map((t) => new Date(t).toISOString());
    const asked = `/api/series?place=long-house&quantity=temperature&spot=canopy&from=${from}&to=${to}&points=2000`;
    const { t, mean } = (await (await ask(asked)).json()) as { t: number[]; mean: number[] };
    return t.flatMap((at, i) => (mean[i] === null ? [] : [[at, mean[i]] as const]));
  };
  return { hub, clock, probe, ask, health, until, points };
}

test('a hub without a clock takes readings, says so, and puts them right when it has one', {
  timeout: 90_000,
}, async () => {
  const { clock, probe, ask, health, until, points } = await wholeHub(3000);
  await probe.publishAsync('garden/p1/temperature', '20.5', { qos: 1 });
  const cameBy = clock.now();
  expect(await health()).toMatchObject({ clock: 'unset', held: 1, evaluatedAt: null });
  const today = await ask('/api/today');
  expect(today.status).toBe(503);
  expect(((await today.json()) as { error: string }).error).toMatch(
    /^Expected a clock that is set, got 1970-01-01T.*1 so far/,
  );
  clock.pass(20 * MINUTE);
  clock.jump(T);
  await until('a clock that is set', ({ clock: state, held }) => state === 'ok' && held === 0);
  const [[at, value] = [0, 0], ...more] = await points();
  expect([value, more]).toEqual([20.5, []]);
  expect(at).toBeGreaterThan(T);
  expect(at).toBeLessThanOrEqual(T + cameBy);
  expect((await ask('/api/today')).status).toBe(200);
});

test('a jump is told in health until the clock stands', { timeout: 90_000 }, async () => {
  const { clock, probe, until, points } = await wholeHub(T);
  await probe.publishAsync('garden/p1/temperature', '20', { qos: 1 });
  clock.jump(2 * HOUR);
  await until('a jump', ({ clock: state }) => state === 'jumped');
  await probe.publishAsync('garden/p1/temperature', '21', { qos: 1 });
  expect(await points()).toHaveLength(1);
  clock.jump(-2 * HOUR); // it was a mistake
  await until('a clock that is right', ({ clock: state, held }) => state === 'ok' && held === 0);
  const kept = await points();
  expect(kept.map(([, value]) => value)).toEqual([20, 21]);
  for (const [t] of kept) expect(Math.abs(t - T)).toBeLessThan(60_000);
});
