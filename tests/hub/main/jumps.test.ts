import { describe, expect, test } from 'vitest';
import { healthOf } from '../../../hub/api/routes/health.ts';
import { joinCore } from '../../../hub/main/core.ts';
import { importFarm } from '../../../hub/main/farm/farmKept.ts';
import { jumpingClock } from '../jumpingClock.ts';
import { farmText, quietLog } from '../smallFarm.ts';
import { tempStore } from '../tempStore.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const YEAR = 365 * 24 * HOUR;
/** Mid-morning of a day in May: no dusk or dawn near an hour of it. */
const T = Date.UTC(2026, 4, 10, 9);

/** A farm with a warm cool room, a silent mast and a tunnel where all is well, an hour on. */
async function livelyHub() {
  const { store } = tempStore();
  const clock = jumpingClock(T - 3 * HOUR);
  importFarm(store, farmText(), clock.now());
  const core = joinCore({ store, clock, log: quietLog, waitMs: 1, boot: 'one' });
  const events: string[] = [];
  const open = new Set<string>();
  // A deadline that moves is told, too; here it matters what opens and what ends.
  core.feed.on('task', ({ id, state }) => {
    if (state === 'ended' || !open.has(id)) events.push(`${state} ${id}`);
    if (state === 'open') open.add(id);
  });
  core.feed.on('alarm', ({ kind, clearedAt }) =>
    events.push(`${clearedAt === null ? 'raised' : 'cleared'} ${kind}`),
  );
  const acknowledged = { sent: 0, kept: 0 };
  const send = (probe: string, quantity: string, value: number) => {
    acknowledged.sent++;
    const payload = Buffer.from(String(value));
    const topic = `garden/${probe}/${quantity}`;
    core.receive({ topic, payload, again: false, from: null }, (error) => {
      if (!error) acknowledged.kept++;
    });
    core.flush();
  };
  let minute = 0;
  /** Minutes as they pass: readings and looks every five of them, without a time of their own. */
  const pass = async (minutes: number) => {
    for (let i = 0; i < minutes; i++, minute++) {
      if (minute % 5 === 0) {
        send('p1', 'temperature', 20 + (minute % 7) / 10);
        send('p1', 'humidity', 60 + (minute % 9));
        send('cold', 'temperature', Math.min(9, 3 + minute / 10) + (minute % 3) / 10);
        if (minute === 0) send('mast', 'temperature', 12);
        core.look();
      }
      clock.pass(MINUTE);
      await core.tick();
    }
  };
  await pass(180);
  const forecasts = () => store.forecasts.between('1970-01-01', '9999-01-01').length;
  const parts = { ...core, brokerConnected: () => true, open: true };
  return {
    store,
    clock,
    core,
    events,
    pass,
    acknowledged,
    forecasts,
    health: () => healthOf(parts),
  };
}

test('the farm of these tests has a task for the mast and an alarm for the cool room', async () => {
  const { core, store } = await livelyHub();
  expect(core.tasks.open().map(({ kind }) => kind)).toContain('see-to-probe');
  expect(store.alarms.raised().map(({ kind }) => kind)).toContain('warm');
});

describe.for([
  ['an hour forward', HOUR],
  ['an hour back', -HOUR],
  ['a year forward', YEAR],
  ['a year back', -YEAR],
] as const)('a clock that is put %s', ([, by]) => {
  test('opens, closes, raises, clears and issues nothing', async () => {
    const { clock, core, store, events, pass, forecasts, health } = await livelyHub();
    const before = {
      tasks: core.tasks.open().map(({ id }) => id),
      alarms: store.alarms.raised(),
      forecasts: forecasts(),
    };
    events.length = 0;
    clock.jump(by);
    await core.tick();
    core.look();
    expect(health()).toMatchObject({ clock: 'jumped', status: 'ok' });
    await pass(4);
    expect([core.clockState(), events, forecasts()]).toEqual(['jumped', [], before.forecasts]);
    await pass(8);
    expect(health()).toMatchObject({ clock: 'ok', status: 'ok', held: 0 });
    expect(core.lastLook()?.at).toBeGreaterThan(clock.now() - 10 * MINUTE);
    expect(core.lastLook()?.failure).toBeNull();
    expect(events).toEqual([]);
    expect(core.tasks.open().map(({ id }) => id)).toEqual(before.tasks);
    expect(store.alarms.raised()).toEqual(before.alarms);
    expect(store.journal.between('clock', 0, 1e15).map(({ body }) => body)).toEqual([{ by }]);
  });

  test('loses no reading, and puts those that came meanwhile where they belong', async () => {
    const { clock, core, store, pass, acknowledged } = await livelyHub();
    const jumpedAt = clock.now();
    clock.jump(by);
    await pass(20);
    expect(acknowledged.kept).toBe(acknowledged.sent);
    const rows = store.readings.allBetween('p1', 'temperature', jumpedAt + by, 1e15);
    const after = rows.filter(({ t }) => t < jumpedAt + by + 20 * MINUTE);
    const times = after.map(({ t }) => (t - jumpedAt - by) / MINUTE);
    expect(times.filter((minutes) => Number.isInteger(minutes))).toEqual(
      expect.arrayContaining([0, 5, 10, 15]),
    );
    expect(core.snapshots.window.newest('p1', 'temperature')?.t).toBeGreaterThan(
      clock.now() - 6 * MINUTE,
    );
    expect(core.snapshots.window.newest('p1', 'temperature')?.t).toBeLessThanOrEqual(clock.now());
    const total = store.readings.allBetween('p1', 'temperature', 0, 1e15).length;
    expect(total).toBe(200 / 5);
  });

  test('and put right again within minutes leaves no trace at all', async () => {
    const { clock, core, store, events, pass, health } = await livelyHub();
    events.length = 0;
    clock.jump(by);
    await pass(3);
    expect(core.clockState()).toBe('jumped');
    clock.jump(-by);
    await pass(12);
    expect(health().clock).toBe('ok');
    expect(events).toEqual([]);
    expect(store.journal.between('clock', 0, 1e15)).toEqual([]);
    const times = store.readings.allBetween('p1', 'temperature', 0, 1e15).map(({ t }) => t);
    expect(times).toEqual(Array.from({ length: 39 }, (_, i) => T - 3 * HOUR + i * 5 * MINUTE));
  });

  test('is worked with afterwards: the alarm clears when the room is cold again', async () => {
    const { clock, core, store, pass } = await livelyHub();
    clock.jump(by);
    await pass(15);
    for (let i = 0; i < 24; i++) {
      const payload = Buffer.from(String(3 + (i % 3) / 10));
      const topic = 'garden/cold/temperature';
      core.receive({ topic, payload, again: false, from: null }, () => {});
      core.flush();
      core.look();
      clock.pass(5 * MINUTE);
      await core.tick();
    }
    expect(store.alarms.raised()).toEqual([]);
  });
});

test('a hub that starts under a clock put back does not take old readings for news', async () => {
  const { clock, store } = await livelyHub();
  const later = jumpingClock(clock.now() - YEAR);
  const core = joinCore({ store, clock: later, log: quietLog, boot: 'two' });
  await core.tick();
  core.look();
  expect(core.lastLook()?.failure).toBeNull();
  expect(core.snapshots.window.newest('p1', 'temperature')).toBeNull();
  expect(core.heardAt('p1')).toBeLessThanOrEqual(later.now());
});
