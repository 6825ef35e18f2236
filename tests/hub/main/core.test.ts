import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { healthOf } from '../../../hub/api/routes/health.ts';
import { importFarm } from '../../../hub/main/farm/farmKept.ts';
import { makeFeed } from '../../../hub/main/keeping/feed.ts';
import { everySoOften } from '../../../hub/main/time/everySoOften.ts';
import { farmText, HOUR, MINUTE, smallHub } from '../smallFarm.ts';

const T = Date.UTC(2026, 4, 10, 9);

const receive = (hub: ReturnType<typeof smallHub>, topic: string, payload: string) => {
  let told: Error | null | undefined;
  hub.core.intake.receive(
    { topic, payload: Buffer.from(payload), receivedAt: hub.clock.now(), again: false },
    (error) => {
      told = error ?? null;
    },
  );
  hub.core.intake.flush();
  return told;
};

test('a reading is in the store, in the window and told to listeners after one commit', () => {
  const hub = smallHub({ now: T });
  const told: unknown[] = [];
  hub.core.feed.on('readings', (readings) => told.push(...readings));
  expect(receive(hub, 'garden/p1/temperature', '20')).toBeNull();
  expect(hub.store.readings.newest('p1', 'temperature')?.value).toBe(20);
  expect(hub.core.snapshots.window.newest('p1', 'temperature')).toEqual({ t: T, value: 20 });
  expect(told).toMatchObject([{ probe: 'p1', quantity: 'temperature', t: T, value: 20 }]);
  expect([hub.core.heardAt('p1'), hub.core.lastReadingAt()]).toEqual([T, T]);
});

test('a probe nobody placed is kept, and one that never sent a reading is not made up', () => {
  const hub = smallHub({ now: T });
  receive(hub, 'garden/stray/temperature', '20');
  receive(hub, 'garden/typo/temperature', 'warm');
  expect(hub.store.probes.get('stray')?.heardAt).toBe(T);
  expect(hub.store.probes.get('typo')).toBeUndefined();
  expect(hub.store.refusals.since(T)).toMatchObject([
    { source: 'typo', reason: 'not-json', count: 1 },
  ]);
});

test('a failed commit tells the sender and leaves no trace, not even of who was heard', () => {
  const hub = smallHub({ now: T });
  const db = new Database(hub.path);
  db.exec("CREATE TRIGGER full BEFORE INSERT ON inbox BEGIN SELECT RAISE(ABORT, 'disk full'); END");
  expect(receive(hub, 'garden/new/temperature', '{"v":20,"t":1778403500}')?.message).toBe(
    'disk full',
  );
  expect(hub.store.probes.get('new')).toBeUndefined();
  db.exec('DROP TRIGGER full');
  db.close();
  expect(receive(hub, 'garden/new/temperature', '{"v":20,"t":1778403500}')).toBeNull();
  expect(hub.store.readings.newest('new', 'temperature')?.value).toBe(20);
  expect(hub.store.probes.get('new')?.heardAt).toBe(T);
});

test('a probe first heard in a batch that failed is written down when it sends again', () => {
  const hub = smallHub({ now: T });
  const db = new Database(hub.path);
  db.exec("CREATE TRIGGER full BEFORE INSERT ON inbox BEGIN SELECT RAISE(ABORT, 'disk full'); END");
  const send = (topic: string, payload: string) =>
    hub.core.intake.receive(
      { topic, payload: Buffer.from(payload), receivedAt: T, again: false },
      () => {},
    );
  send('garden/new/temperature', '{"v":20,"t":1778403500}');
  send('garden/p1/temperature', 'warm');
  hub.core.intake.flush();
  expect(hub.store.probes.get('new')).toBeUndefined();
  db.exec('DROP TRIGGER full');
  db.close();
  receive(hub, 'garden/new/temperature', '{"v":20,"t":1778403500}');
  expect(hub.store.probes.get('new')).toBeDefined();
});

test('one broken listener does not keep the others from hearing', () => {
  const faults: unknown[] = [];
  const feed = makeFeed((error) => faults.push(error));
  const heard: number[] = [];
  feed.on('looked', () => {
    throw new Error('broken');
  });
  const stop = feed.on('looked', ({ at }) => heard.push(at));
  feed.tell('looked', { at: 1 });
  stop();
  feed.tell('looked', { at: 2 });
  expect([heard, faults.length]).toEqual([[1], 2]);
});

test('no task is opened by a hub whose clock is not set', () => {
  const hub = smallHub({ now: T, isSet: false });
  hub.send('p1', 'temperature', T, 20);
  hub.clock.set(T + 9 * HOUR);
  hub.core.look();
  expect(hub.core.lastLook()).toBeNull();
  expect(hub.core.tasks.open()).toEqual([]);
});

test('a silent probe is asked about once, and the task lapses when it is heard again', () => {
  const hub = smallHub({ now: T });
  hub.send('p1', 'temperature', T, 20);
  hub.clock.set(T + 2 * HOUR);
  hub.core.look();
  const mine = () => hub.core.tasks.open().filter(({ subject }) => subject === 'p1');
  expect(mine()).toMatchObject([{ kind: 'see-to-probe', place: 'long-house' }]);
  hub.core.look();
  expect(mine()).toHaveLength(1);
  for (let t = T + 2 * HOUR; t <= T + 3 * HOUR; t += 5 * MINUTE) {
    hub.clock.set(t);
    hub.send('p1', 'temperature', t, 20 + (t % 7) / 10);
    hub.core.look();
  }
  expect(mine()).toEqual([]);
});

test('a hub whose looks have failed ever since it started says so', () => {
  const hub = smallHub({ now: T });
  hub.send('p1', 'temperature', T, 20);
  const db = new Database(hub.path);
  db.exec("INSERT INTO tasks VALUES ('x', 'x', 'open', 'no JSON', 1, NULL)");
  db.close();
  hub.core.look();
  expect(hub.core.lastLook()?.failure ?? null).toBe(null);
  expect(healthOf(hub.parts).status).toBe('failing');
});

test('a hub whose later look failed says so, and keeps what it last saw', () => {
  const hub = smallHub({ now: T });
  hub.send('p1', 'temperature', T, 20);
  hub.core.look();
  expect(healthOf(hub.parts).status).toBe('ok');
  const db = new Database(hub.path);
  db.exec("INSERT INTO tasks VALUES ('x', 'x', 'open', 'no JSON', 1, NULL)");
  db.close();
  hub.core.look();
  expect(hub.core.lastLook()).toMatchObject({ at: T, failure: expect.stringContaining('JSON') });
  expect(healthOf(hub.parts).status).toBe('failing');
});

test('a farm described anew is seen at the next look', () => {
  const hub = smallHub({ now: T });
  hub.core.look();
  importFarm(hub.store, farmText().replace('name: Long House', 'name: Tall House'), T);
  hub.core.look();
  expect(hub.core.farm().place('long-house')?.name).toBe('Tall House');
});

test('a farm with faults changes nothing', () => {
  const hub = smallHub({ now: T });
  const before = hub.store.farm();
  expect(() => importFarm(hub.store, 'farm: 1', T)).toThrow(/^Expected /);
  expect(hub.store.farm()).toBe(before);
});

test('a probe moved by the farm file keeps where it hung before', () => {
  const hub = smallHub({ now: T });
  importFarm(
    hub.store,
    farmText().replace('place: long-house, spot: canopy', 'place: outside, spot: grass'),
    T,
  );
  expect(
    hub.store.probes.placementsOf('p1').map(({ place, from, to }) => [place, from, to]),
  ).toEqual([
    ['long-house', 0, T],
    ['outside', T, null],
  ]);
});

test.for([
  [5 * MINUTE, 1, '*/5 * * * *'],
  [MINUTE, 1, '*/1 * * * *'],
  [5 * MINUTE, 60, '*/5 * * * * *'],
  [MINUTE, 600, '*/1 * * * * *'],
] as const)('every %d ms at speed %d is the pattern %s', ([interval, speed, pattern]) => {
  expect(everySoOften(interval, speed)).toBe(pattern);
});
