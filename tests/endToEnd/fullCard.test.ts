import { readdirSync, statSync, truncateSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { connectAsync } from 'mqtt';
import { expect, onTestFinished, test } from 'vitest';
import type { Health } from '../../hub/contract/index.ts';
import { fillUp, smallCard } from '../hub/smallCard.ts';
import { hasChromium, openBrowser } from './browser.ts';
import { gardenFile } from './gardenFile.ts';
import { startHub } from './hubProcess.ts';
import { tempFolder, until } from './processes.ts';
import { type Noted, startPublisher } from './publishers.ts';
import { brokenStore, lostReadings } from './storeFaults.ts';

test('a hub whose card is full says so everywhere, acknowledges nothing it cannot keep, and goes on when there is room', {
  timeout: 180_000,
}, async (context) => {
  const card = smallCard(32);
  if (card === null) return context.skip('needs the right to mount a small card');
  const farm = gardenFile(tempFolder());
  const hub = await startHub({ data: card, farm, open: true, more: ['--gather', '0'] });
  const listener = await connectAsync(`mqtt://127.0.0.1:${hub.ports.mqtt}`);
  onTestFinished(() => listener.endAsync(true).then(() => {}));
  const alarms: { alarm: string; kind: string; words: string }[] = [];
  listener.on('message', (_topic, payload) => alarms.push(JSON.parse(payload.toString())));
  await listener.subscribeAsync('dewpost/alarm');
  const acknowledged: Noted[] = [];
  let t = Date.now() - 20 * 86_400_000;
  const next = () => {
    t += 1000;
    return { quantity: 'temperature', t, value: 15 + (t % 5) };
  };
  const sending = async () =>
    startPublisher(hub.ports.mqtt, { probe: 'mast', next }, acknowledged, 20);

  const first = await sending();
  await until(() => acknowledged.length > 200, 'readings that are acknowledged');
  await first.stop();
  const makeRoom = fillUp(card);
  // 503 while it keeps nothing: the body tells why.
  const health = async () => (await (await hub.ask('/api/health')).json()) as Health;
  await until(
    async () => {
      const publisher = await sending(); // cut off as soon as one is not kept
      await pause(300);
      await publisher.stop();
      return (await health()).store.trouble === 'full';
    },
    'a store in trouble',
    60_000,
  );
  expect((await health()).status).toBe('failing');
  await until(() => alarms.some((one) => one.kind === 'store'), 'an alarm about the store');
  expect(alarms.find(({ kind }) => kind === 'store')).toMatchObject({
    alarm: 'raised',
    words: expect.stringContaining('The card is full'),
  });
  expect(await (await hub.ask('/metrics')).text()).toContain('dewpost_store_keeps 0');
  expect((await hub.ask('/api/today')).status).toBe(200);
  if (hasChromium) {
    const { page, close } = await openBrowser();
    await page.goto(`${hub.page}/probes`);
    await page.getByText('The card is full').waitFor({ timeout: 30_000 });
    makeRoom();
    await page.getByText('The card is full').waitFor({ state: 'detached', timeout: 30_000 });
    await close();
  } else makeRoom();
  await until(async () => (await health()).store.trouble === null, 'a store that keeps again');
  await until(() => alarms.some((one) => one.kind === 'store' && one.alarm === 'clear'), 'its end');
  const before = acknowledged.length;
  const last = await sending();
  await until(() => acknowledged.length > before + 100, 'readings that are acknowledged again');
  await last.stop();
  expect((await hub.stop()).code).toBe(0);
  const db = new Database(join(card, 'dewpost.db'), { readonly: true });
  expect(lostReadings(db, acknowledged)).toEqual([]);
  expect(brokenStore(db)).toEqual([]);
  db.close();
});

test('a hub that is asked to end under load keeps every acknowledged reading, and leaves nothing waiting', async () => {
  const data = tempFolder();
  const hub = await startHub({ data, farm: gardenFile(data), open: true });
  const acknowledged: Noted[] = [];
  let t = Date.now() - 20 * 86_400_000;
  const next = () => {
    t += 1000;
    return { quantity: 'humidity', t, value: 50 + (t % 5) };
  };
  const publishers = await Promise.all(
    ['mast', 'leaf', 'bloom'].map((probe) =>
      startPublisher(hub.ports.mqtt, { probe, next }, acknowledged, 20),
    ),
  );
  await until(() => acknowledged.length > 100, 'readings that are acknowledged');
  const begin = performance.now();
  const ended = await hub.stop();
  process.stdout.write(`asked to end under load: ${Math.round(performance.now() - begin)} ms\n`);
  expect(ended.code).toBe(0);
  for (const publisher of publishers) await publisher.stop();
  const db = new Database(join(data, 'dewpost.db'), { readonly: true });
  expect(lostReadings(db, acknowledged)).toEqual([]);
  expect(brokenStore(db)).toEqual([]);
  db.close();
});

test('a hub whose file was cut starts with what could be saved, and says so', async () => {
  const data = tempFolder();
  const farm = gardenFile(data);
  const first = await startHub({ data, farm, open: true });
  await first.stop();
  const file = join(data, 'dewpost.db');
  truncateSync(file, statSync(file).size - 3000);
  const hub = await startHub({ data, farm, open: true });
  expect(hub.log()).toContain('the store was damaged');
  const { mended } = await hub.get<{ mended: { aside: string } | null }>('/api/keeping');
  expect(mended?.aside).toContain('dewpost.damaged-');
  expect(readdirSync(data).some((name) => name.startsWith('dewpost.damaged-'))).toBe(true);
  await hub.stop();
});
