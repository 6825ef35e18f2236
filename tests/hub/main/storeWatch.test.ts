import { rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import type { Alarm } from '../../../hub/alarms/index.ts';
import { healthOf } from '../../../hub/api/routes/health.ts';
import { watchStore } from '../../../hub/main/keeping/storeWatch.ts';
import { openStore } from '../../../hub/store/index.ts';
import { until } from '../../endToEnd/processes.ts';
import { fillUp, smallCard } from '../smallCard.ts';
import { HOUR, MINUTE, quietLog, smallHub } from '../smallFarm.ts';
import { tempStore } from '../tempStore.ts';

const T = Date.UTC(2026, 4, 10, 9);

type Hub = Pick<ReturnType<typeof smallHub>, 'core' | 'clock'>;
/** @returns why it was not acknowledged; null when it was. */
function send({ core, clock }: Hub, t: number, v: number): string | null {
  let told: string | null = 'nobody was told';
  core.intake.receive(
    {
      topic: 'garden/cold/temperature',
      payload: Buffer.from(JSON.stringify({ v, t })),
      receivedAt: clock.now(),
      again: false,
    },
    (error) => {
      told = error ? error.message : null;
    },
  );
  core.intake.flush();
  return told;
}

function watched(options: Parameters<typeof smallHub>[0]) {
  const hub = smallHub(options);
  const alarms: Alarm[] = [];
  hub.core.feed.on('alarm', (alarm) => alarms.push(alarm));
  const watch = watchStore({
    ...hub.core,
    log: quietLog,
    look: () => hub.core.look(),
    backups: null,
  });
  onTestFinished(watch.stop);
  const raised = (kind: string) => alarms.filter((one) => one.kind === kind && !one.clearedAt);
  const cleared = (kind: string) => alarms.filter((one) => one.kind === kind && one.clearedAt);
  return { ...hub, alarms, raised, cleared };
}

test('with a full card rules go on, a warm room raises its alarm once, and all is written later', async (context) => {
  const card = smallCard(24);
  if (card === null) return context.skip('needs the right to mount a small card');
  const path = join(card, 'dewpost.db');
  const store = openStore(path);
  onTestFinished(() => store.close());
  const hub = watched({ now: T, store: { store, path, again: () => store } });
  for (let t = T - 3 * HOUR; t < T; t += 5 * MINUTE) hub.send('cold', 'temperature', t, 3.1);
  hub.core.look();
  const before = store.tasks.open().length;
  const makeRoom = fillUp(card);
  let refused = 0;
  const warm = (t: number) => {
    hub.clock.set(t);
    for (let i = 0; i < 30; i++) if (send(hub, t + i, 9.5 + (i % 3) / 10) !== null) refused++;
    hub.core.look();
  };
  // What fits into the log's own room is kept still, and then no more.
  for (let t = T; t < T + 40 * HOUR && refused < 200; t += 5 * MINUTE) warm(t);
  expect(refused).toBeGreaterThan(100);
  expect(store.trouble()).toBe('full');
  expect(hub.core.lastLook()?.failure).toBeNull();
  expect(hub.raised('warm')).toHaveLength(1);
  await until(() => hub.raised('store').length > 0, 'an alarm about the store');
  expect(hub.raised('store')[0]?.words).toContain('The card is full');
  expect(healthOf(hub.parts)).toMatchObject({ status: 'failing', store: { trouble: 'full' } });
  makeRoom();
  await until(() => hub.cleared('store').length > 0, 'the end of that alarm', 30_000);
  // A card as small as this one has little room even when it has some again.
  const { status, store: after } = healthOf(hub.parts);
  expect([['ok', 'degraded'].includes(status), after.trouble]).toEqual([true, null]);
  hub.core.look();
  // On the disk, once each: what was decided while nothing could be written.
  const open = store.tasks.open();
  expect(open.length).toBeGreaterThan(before);
  expect(new Set(open.map(({ key }) => key)).size).toBe(open.length);
  expect(store.alarms.raised().filter(({ kind }) => kind === 'warm')).toHaveLength(1);
  expect(hub.raised('warm')).toHaveLength(1);
});

test('decisions wait in memory while nothing can be written, are made once, and are written once', async () => {
  const hub = watched({ now: T });
  for (let t = T - 3 * HOUR; t < T; t += 5 * MINUTE) hub.send('cold', 'temperature', t, 3.1);
  hub.core.look();
  const opened = () =>
    hub.store.journal
      .between('task', 0, T * 2)
      .filter(({ body }) => (body as { event: string }).event === 'opened').length;
  const before = opened();
  for (const rest of ['', '-wal', '-shm']) rmSync(`${hub.path}${rest}`, { force: true });
  for (let t = T; t < T + 2 * HOUR; t += 5 * MINUTE) {
    hub.clock.set(t);
    expect(send(hub, t, 9.5 + (t % 7) / 10)).toMatch(/^Expected the store in /);
    hub.core.look();
  }
  expect(opened()).toBe(before);
  expect(hub.core.lastLook()).toMatchObject({ failure: null });
  expect(hub.core.lastLook()?.open.length).toBeGreaterThan(0);
  expect(hub.raised('warm')).toHaveLength(1);
  await until(() => hub.store.trouble() === null, 'a file that is back', 30_000);
  expect(opened()).toBeGreaterThan(before);
  const keys = hub.store.tasks.open().map(({ key }) => key);
  expect(new Set(keys).size).toBe(keys.length);
  expect(hub.store.alarms.raised().filter(({ kind }) => kind === 'warm')).toHaveLength(1);
  expect(hub.cleared('store')).toHaveLength(1);
});

test('a hub that is in no trouble says nothing of its store', async () => {
  const hub = watched({ now: T, store: tempStore() });
  hub.send('p1', 'temperature', T, 20);
  await new Promise((resolve) => setTimeout(resolve, 2500));
  expect(hub.alarms.filter(({ kind }) => kind === 'store')).toEqual([]);
  expect(dirname(hub.path)).not.toBe('');
});
