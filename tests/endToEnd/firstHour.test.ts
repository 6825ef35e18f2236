import { setTimeout as pause } from 'node:timers/promises';
import { connectAsync } from 'mqtt';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Health, Today } from '../../hub/contract/index.ts';
import { gardenFile } from './gardenFile.ts';
import { type HubProcess, startHub } from './hubProcess.ts';
import { tempFolder, until } from './processes.ts';

// A hub that has just been unpacked: nothing is known, and nothing may be made up.

const FIVE_MINUTES = 300_000; // ms

let hub: HubProcess;
const begun = Date.now();
beforeAll(async () => {
  const data = tempFolder();
  hub = await startHub({ data, farm: gardenFile(data), open: true });
}, 60_000);
afterAll(() => hub?.kill());

test('before any reading nothing is fine, nothing is an alarm, and no time is made up', async () => {
  const { tasks, places, coolRooms, sentence } = await hub.get<Today>('/api/today');
  expect(sentence).not.toMatch(/Nothing asks to be done/);
  expect(places.every(({ temperature, wet }) => temperature === null && wet === null)).toBe(true);
  expect(coolRooms.map(({ state }) => state)).toEqual(['unknown']);
  expect((await hub.get<Health>('/api/health')).status).toBe('no-readings');
  expect.soft(tasks.filter(({ alarm }) => alarm).map(({ why }) => why)).toEqual([]);
  for (const { title, why, doBy } of tasks) {
    if (doBy !== null) expect.soft(Date.parse(doBy), title).toBeGreaterThan(begun);
    expect.soft(why).not.toMatch(/\d{4,} hours/);
  }
});

test('the first reading of a probe is on Today within seconds', { timeout: 60_000 }, async () => {
  // The look of every five minutes would hide that the reading itself led to none.
  const toMark = FIVE_MINUTES - (Date.now() % FIVE_MINUTES);
  if (toMark < 20_000) await pause(toMark + 2_000);
  const probe = await connectAsync(`mqtt://127.0.0.1:${hub.ports.mqtt}`);
  await probe.publishAsync('garden/leaf/temperature', '21.4', { qos: 1 });
  await probe.endAsync();
  await until(
    async () => {
      const { places, sentence } = await hub.get<Today>('/api/today');
      const house = places.find(({ id }) => id === 'long-house');
      return house?.temperature === 21.9 && !sentence.includes('Long House'); // corrected by 0.5
    },
    'the first reading on Today',
    15_000,
  );
});
