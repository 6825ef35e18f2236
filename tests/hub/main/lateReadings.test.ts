import { expect, test } from 'vitest';
import { HOUR, MINUTE, smallHub } from '../smallFarm.ts';

const DAY = 24 * HOUR;
const NOW = Date.UTC(2026, 4, 24, 10);
const DAYS = 14;
const STEP = 10 * MINUTE;

/** Warm by day, damp at night, a little different each day. */
const measured = (t: number) => {
  const hours = (t % DAY) / HOUR;
  const day = Math.floor(t / DAY);
  const temperature = 14 + 7 * Math.sin(((hours - 9) / 24) * 2 * Math.PI) + (day % 5) / 2;
  return {
    temperature: Math.round(temperature * 10) / 10,
    humidity: Math.round(Math.min(99, 110 - 2 * temperature)),
  };
};
const times = Array.from({ length: (DAYS * DAY) / STEP }, (_, i) => NOW - DAYS * DAY + i * STEP);

type Small = ReturnType<typeof smallHub>;
const receive = (hub: Small, pack: readonly object[]) => {
  let failure: Error | null | undefined;
  const payload = Buffer.from(JSON.stringify(pack));
  hub.core.receive({ topic: 'garden/p1', payload, again: false, from: null }, (error) => {
    failure = error;
  });
  hub.core.flush();
  if (failure) throw failure;
};
const recordsAt = (t: number) =>
  Object.entries(measured(t)).map(([n, v]) => ({ n, v, t: t / 1000 }));
/** Added up in another order, a sum may differ in its last digit. */
const rounded = <Row extends { readonly sum: number }>(row: Row) => ({
  ...row,
  sum: Number(row.sum.toFixed(6)),
});
const facts = (hub: Small) => {
  hub.core.snapshots.fold();
  const id = hub.store.readings.idOf('p1', 'temperature') ?? 0;
  return {
    hours: hub.store.rollups.hours(id, 0, 1e15).map(rounded),
    days: hub.store.rollups.days(id, 0, 1e15).map(rounded),
    places: hub.core.snapshots.days.between('long-house', '', '9999-12-31', NOW),
    now: hub.core.snapshots.window.column('p1', 'temperature').t.filter((t) => t >= NOW - 2 * DAY),
  };
};

function sentAtOnce() {
  const hub = smallHub({ now: NOW - DAYS * DAY });
  for (const t of times) {
    hub.clock.set(t);
    receive(hub, recordsAt(t));
    if (t % HOUR === 0) hub.core.look();
  }
  hub.clock.set(NOW);
  hub.core.look();
  return hub;
}

test.for([
  ['a day', 1],
  ['two weeks', DAYS],
] as const)(
  'what a probe held back for %s gives the same days, hours and tasks as if sent at once',
  { timeout: 120_000 },
  ([, days]) => {
    const atOnce = sentAtOnce();
    const since = NOW - days * DAY;
    const hub = smallHub({ now: NOW - DAYS * DAY });
    const early = times.filter((t) => t < since);
    for (const t of early) {
      hub.clock.set(t);
      receive(hub, recordsAt(t));
    }
    hub.clock.set(NOW);
    hub.core.look(); // the days are made without them, and have to be made again
    facts(hub);
    const opened: string[] = [];
    hub.core.feed.on('task', ({ state, key }) => {
      if (state === 'open') opened.push(key);
    });
    // It sends the newest first, as many do, and the rest in packs.
    const late = times.filter((t) => t >= since).reverse();
    for (let i = 0; i < late.length; i += 50)
      receive(
        hub,
        late
          .slice(i, i + 50)
          .reverse()
          .flatMap(recordsAt),
      );
    hub.core.look();
    expect(facts(hub)).toEqual(facts(atOnce));
    const standing = atOnce.core.tasks.open().map(({ key }) => key);
    expect(opened.filter((key) => !standing.includes(key))).toEqual([]);
    for (const task of hub.core.tasks.open()) expect(task.openedAt).toBe(NOW);
    expect(hub.core.lastLook()?.failure).toBeNull();
  },
);

test.for([
  ['in 1970', 300, true],
  ['never set, since 2000', Date.UTC(2000, 0, 1, 0, 5), true],
  ['years behind', NOW - 3 * 365 * DAY, true],
  ['years ahead', NOW + 365 * DAY, true],
  ['hours ahead', NOW + 3 * HOUR, true],
  ['a little ahead', NOW + 4 * MINUTE, false],
  ['hours behind', NOW - 3 * HOUR, false],
] as const)(
  'a probe whose clock is %s: its readings are kept, and none looks fresh that may not be',
  ([, says, doubted]) => {
    const hub = smallHub({ now: NOW });
    for (let i = 0; i < 6; i++) {
      const at = { t: says + i * 5 * MINUTE };
      hub.clock.set(NOW + i * 5 * MINUTE);
      const payload = Buffer.from(JSON.stringify({ v: 20 + i / 10, ...at }));
      const topic = 'garden/p1/temperature';
      hub.core.receive({ topic, payload, again: false, from: null }, () => {});
      hub.core.flush();
    }
    const rows = hub.store.readings.allBetween('p1', 'temperature', 0, 1e15);
    expect(rows.map(({ value }) => value)).toEqual([20, 20.1, 20.2, 20.3, 20.4, 20.5]);
    expect(rows.every(({ flag }) => flag === (doubted ? 'clock' : null))).toBe(true);
    // A doubted one stands where it came in; a believed one where it says.
    const stands = doubted ? NOW : says;
    expect(rows.map(({ t }) => t)).toEqual([0, 1, 2, 3, 4, 5].map((i) => stands + i * 5 * MINUTE));
    const newest = hub.core.snapshots.window.newest('p1', 'temperature');
    if (doubted) expect(newest).toBeNull();
    else expect(newest?.t).toBe(says + 25 * MINUTE);
    expect(hub.core.heardAt('p1')).toBe(NOW + 25 * MINUTE);
  },
);

test('a clock that drifts ahead is believed for five minutes’ worth, and then told about', () => {
  const hub = smallHub({ now: NOW });
  for (let i = 0; i < 60; i++) {
    hub.clock.set(NOW + i * 10 * MINUTE);
    const t = hub.clock.now() + i * 10_000; // a minute in an hour
    hub.send('p1', 'temperature', t, 20 + (i % 5) / 10);
  }
  const rows = hub.store.readings.allBetween('p1', 'temperature', 0, 1e15);
  expect(rows).toHaveLength(60);
  const doubted = rows.filter(({ flag }) => flag === 'clock').length;
  expect(doubted).toBe(60 - 31); // 30 steps of ten seconds are five minutes
  expect(hub.store.refusals.since(NOW).some(({ reason }) => reason === 'clock')).toBe(true);
});
