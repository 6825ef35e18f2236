import { expect, test } from 'vitest';
import { joinCore } from '../../../hub/main/core.ts';
import { importFarm } from '../../../hub/main/farm/farmKept.ts';
import { jumpingClock } from '../jumpingClock.ts';
import { farmText, quietLog } from '../smallFarm.ts';
import { tempStore } from '../tempStore.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const T = Date.UTC(2026, 4, 10, 9);

/** A hub over a store, at the start of a machine: `boot` names it. */
function hubAt(start: number, given = tempStore(), boot = 'one') {
  const { store } = given;
  const clock = jumpingClock(start);
  if (store.farm() === undefined) importFarm(store, farmText(), start);
  const core = joinCore({ store, clock, log: quietLog, waitMs: 1, boot });
  const send = (topic: string, payload: string) => {
    let told: Error | null | undefined;
    core.receive({ topic, payload: Buffer.from(payload), again: false, from: null }, (error) => {
      told = error ?? null;
    });
    core.flush();
    return told;
  };
  const rows = (probe = 'p1', quantity = 'temperature') =>
    store.readings
      .allBetween(probe, quantity, -1e15, 1e15)
      .map(({ t, value, flag }) => [t, value, flag] as const);
  return { ...given, core, clock, send, rows };
}

test('a reading that comes before the clock is set is acknowledged, held, and placed rightly', async () => {
  const { core, clock, send, rows, store } = hubAt(5000);
  expect(core.clockState()).toBe('unset');
  expect(send('garden/p1/temperature', '20')).toBeNull();
  clock.pass(10 * MINUTE);
  expect(send('garden/p1', '[{"n":"temperature","u":"Cel","v":21,"t":-60}]')).toBeNull();
  expect([rows(), core.held(), store.held.size().count]).toEqual([[], 2, 2]);
  clock.pass(5 * MINUTE);
  clock.jump(T); // somebody has set it: it is now T + 15 min + 5 s
  await core.tick();
  expect(rows()).toEqual([
    [T + 5000, 20, null],
    [T + 5000 + 9 * MINUTE, 21, null], // sent ten minutes later, a minute old
  ]);
  expect([core.held(), store.held.size().count, core.clockState()]).toEqual([0, 0, 'ok']);
  expect(core.lastLook()?.at).toBe(clock.now());
});

test('a time the probe tells is used when the hub can judge it, and doubted when it is wrong', async () => {
  const { core, clock, send, rows } = hubAt(0);
  send('garden/p1/temperature', JSON.stringify({ v: 20, t: T - HOUR }));
  send('garden/p1/temperature', JSON.stringify({ v: 30, t: 12 }));
  send('garden/p1/temperature', JSON.stringify({ v: 31, t: T + 24 * HOUR }));
  clock.pass(MINUTE);
  clock.jump(T);
  await core.tick();
  expect(rows()).toEqual([
    [T - HOUR, 20, null],
    [T, 30, 'clock'], // at the moment it came
    [T + 1, 31, 'clock'],
  ]);
});

test('what cannot be read is refused at once, not held', () => {
  const { core, send, store } = hubAt(0);
  expect(send('garden/p1/temperature', 'warm')).toBeNull();
  expect([core.held(), store.held.size().count]).toEqual([0, 0]);
  expect(store.refusals.since(0)).toMatchObject([{ source: 'p1', reason: 'not-json' }]);
});

test('held readings survive the end of the hub, and are placed by the count that goes on', async () => {
  const first = hubAt(0);
  first.send('garden/p1/temperature', '20');
  const second = hubAt(0, first, 'one'); // the machine did not start again: its count went on
  second.clock.pass(30 * MINUTE);
  second.clock.jump(T);
  await second.core.tick();
  expect(second.rows()).toEqual([[T, 20, null]]);
});

test('after a new start of the machine only the probe’s own time places them; the rest stays held', async () => {
  const first = hubAt(0);
  first.send('garden/p1/temperature', '20');
  first.send('garden/p1/temperature', JSON.stringify({ v: 21, t: new Date(T).toISOString() }));
  first.send('garden/p1', '[{"n":"temperature","v":22,"t":-60},{"n":"humidity","v":80}]');
  first.send('garden/p1/temperature', JSON.stringify({ v: 23, t: 12 }));
  const second = hubAt(T + HOUR, first, 'two');
  await second.core.tick();
  expect(second.rows()).toEqual([[T, 21, null]]);
  expect(second.core.held()).toBe(3);
  // And again at every start: none is lost, none is placed twice, none is given a time of the hub's.
  const third = hubAt(T + 2 * HOUR, second, 'three');
  await third.core.tick();
  expect([third.rows(), third.core.held()]).toEqual([[[T, 21, null]], 3]);
  expect(third.core.lastLook()).not.toBeNull(); // what waits for ever keeps nobody from looking
});

test('a hub that ends while it lets them in goes on with the same times', async () => {
  const first = hubAt(0);
  first.send('garden/p1/temperature', '20');
  first.clock.pass(10 * MINUTE);
  first.store.held.resolve('one', T - 1_000_000); // written down, and then the power went
  const second = hubAt(T + 24 * HOUR, first, 'two');
  await second.core.tick();
  expect([second.rows(), second.core.held()]).toEqual([[[T, 20, null]], 0]);
});

test('what cannot be kept is not acknowledged', () => {
  const { send, store } = hubAt(0);
  const { add } = store.held;
  Object.assign(store.held, {
    add: () => {
      throw new Error('disk full');
    },
  });
  expect(send('garden/p1/temperature', '20')?.message).toBe('disk full');
  Object.assign(store.held, { add });
  expect(send('garden/p1/temperature', '20')).toBeNull();
});

test('a thousand held readings are placed in order, each at its own moment', async () => {
  const { core, clock, send, rows } = hubAt(0);
  for (let i = 0; i < 1200; i++) {
    send('garden/p1/temperature', String(15 + (i % 20) / 10));
    clock.pass(MINUTE);
  }
  clock.jump(T);
  await core.tick();
  expect(rows().map(([t]) => t)).toEqual(Array.from({ length: 1200 }, (_, i) => T + i * MINUTE));
  expect(rows().every(([, , flag]) => flag === null)).toBe(true);
});
