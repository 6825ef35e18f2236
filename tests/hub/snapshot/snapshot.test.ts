import { expect, test } from 'vitest';
import { importFarm } from '../../../hub/main/farm/farmKept.ts';
import type { Snapshot } from '../../../rules/decide/index.ts';
import { farmText, HOUR, MINUTE, type SmallHub, smallHub } from '../smallFarm.ts';

const T = Date.UTC(2026, 4, 10, 9);
const DAY = 24 * HOUR;

const take = ({ core, clock }: SmallHub): Snapshot =>
  core.snapshots.take(clock.now(), [], core.heardAt);
const days = ({ core, clock }: SmallHub, from: string, to = from) =>
  core.snapshots.days.between('long-house', from, to, clock.now());
const spotOf = (snapshot: Snapshot, place: string) =>
  snapshot.places.find(({ id }) => id === place)?.spots[0];
/** A day and a night of plausible readings, each half hour. */
const fill = (hub: SmallHub, probe: string, from: number, to: number, shift = 0) => {
  for (let t = from; t < to; t += 30 * MINUTE) {
    const value = 12 + shift + 3 * Math.sin(((t % DAY) / DAY) * 2 * Math.PI - 2);
    hub.send(probe, 'temperature', t, Math.round(value * 100) / 100);
    hub.send(probe, 'humidity', t + 1, 80);
  }
};

test('a snapshot is plain data: it survives being written and read', () => {
  const hub = smallHub({ now: T });
  fill(hub, 'p1', T - 6 * HOUR, T);
  const snapshot = take(hub);
  expect(JSON.parse(JSON.stringify(snapshot))).toEqual(snapshot);
  expect(structuredClone(snapshot)).toEqual(snapshot);
  expect(spotOf(snapshot, 'long-house')?.columns.temperature?.t).toHaveLength(12);
  expect(spotOf(snapshot, 'long-house')?.air).toHaveLength(12);
  expect(snapshot.day).toEqual({
    name: '2026-05-10',
    begins: Date.UTC(2026, 4, 9, 23),
    ends: Date.UTC(2026, 4, 10, 23),
  });
});

test('a snapshot of a running hub is that of one which has just started', () => {
  const hub = smallHub({ now: T - 3 * DAY });
  fill(hub, 'p1', T - 4 * DAY, T - 3 * DAY);
  take(hub);
  hub.clock.set(T);
  fill(hub, 'mast', T - 50 * HOUR, T);
  const restarted = smallHub({
    now: T,
    store: { store: hub.store, path: hub.path, again: () => hub.store },
  });
  expect(take(hub)).toEqual(take(restarted));
});

test('nothing older than 48 hours is in a snapshot', () => {
  const hub = smallHub({ now: T - 3 * DAY });
  fill(hub, 'p1', T - 4 * DAY, T - 3 * DAY);
  take(hub);
  hub.clock.set(T);
  const spot = spotOf(take(hub), 'long-house');
  expect(spot?.columns).toEqual({});
  expect(spot?.air).toEqual([]);
});

test('a reading from before the probe was moved is not where it hangs now', () => {
  const hub = smallHub({ now: T });
  hub.send('p1', 'temperature', T - 2 * HOUR, 20);
  hub.store.probes.place('p1', 'outside', 'grass', T - HOUR);
  hub.core.refarmed();
  hub.send('p1', 'temperature', T - MINUTE, 21);
  const outside = take(hub).places.find(({ id }) => id === 'outside');
  const grass = outside?.spots.find(({ spot }) => spot === 'grass');
  expect(grass?.columns.temperature?.value).toEqual([21]);
  expect(spotOf(take(hub), 'long-house')).toBeUndefined();
});

test('what was said about vents is trusted for a day, then it is not known', () => {
  const hub = smallHub({ now: T });
  const opened = () => take(hub).places.find(({ id }) => id === 'long-house')?.opened;
  expect(opened()).toBeNull();
  hub.store.journal.add({
    t: T,
    who: 'Ann',
    what: 'vents',
    place: 'long-house',
    subject: null,
    body: { is: true },
  });
  expect(opened()).toBe(true);
  hub.clock.set(T + 25 * HOUR);
  expect(opened()).toBeNull();
});

test('a day without readings is unknown, never zero', () => {
  const hub = smallHub({ now: T });
  hub.send('p1', 'temperature', T - 2 * DAY, 20);
  expect(days(hub, '2026-05-09')).toEqual([
    {
      day: '2026-05-09',
      min: null,
      max: null,
      mean: null,
      wetHours: null,
      unknownHours: 24,
      longestSpellHours: null,
      degreeDays: null,
      botrytisIndex: null,
    },
  ]);
});

test('a day is made again after a late reading', () => {
  const hub = smallHub({ now: T });
  fill(hub, 'p1', T - 2 * DAY, T);
  hub.core.snapshots.fold();
  const before = days(hub, '2026-05-09')[0];
  hub.send('p1', 'temperature', Date.UTC(2026, 4, 9, 12, 10), 39);
  hub.core.snapshots.fold();
  const after = days(hub, '2026-05-09')[0];
  expect(before?.max).toBeLessThan(20);
  expect(after?.max).toBe(39);
});

test('days back-filled with a few humidities among them are all made again', () => {
  const hub = smallHub({ now: T });
  fill(hub, 'p1', T - 12 * HOUR, T);
  hub.send('p1', 'temperature', T - 6 * DAY, 12);
  hub.core.snapshots.fold();
  expect(days(hub, '2026-05-06', '2026-05-08').map(({ mean }) => mean)).toEqual([null, null, null]);
  const start = Date.UTC(2026, 4, 6, 6);
  for (let t = start; t < start + 60 * HOUR; t += 20 * MINUTE) hub.send('p1', 'temperature', t, 15);
  hub.send('p1', 'humidity', start, 80);
  hub.core.snapshots.fold();
  expect(days(hub, '2026-05-06', '2026-05-08').map(({ max }) => max)).toEqual([15, 15, 15]);
});

test('a night is made again after a late reading', () => {
  const hub = smallHub({ now: T });
  fill(hub, 'p1', T - 3 * DAY, T);
  const low = () => spotOf(take(hub), 'long-house')?.nights.at(-1)?.low;
  hub.core.snapshots.fold();
  const before = low();
  hub.send('p1', 'temperature', Date.UTC(2026, 4, 10, 2, 7), 1.5);
  hub.core.snapshots.fold();
  expect(before).toBeGreaterThan(5);
  expect(low()).toBe(1.5);
});

test('a gap of more than two hours hides the low of its night', () => {
  const hub = smallHub({ now: T });
  fill(hub, 'p1', T - 2 * DAY, Date.UTC(2026, 4, 9, 23));
  fill(hub, 'p1', Date.UTC(2026, 4, 10, 2), T);
  hub.core.snapshots.fold();
  const nights = spotOf(take(hub), 'long-house')?.nights ?? [];
  expect(nights.at(-1)).toMatchObject({ night: '2026-05-10', low: null });
  expect(nights.at(-2)?.low).not.toBeNull();
});

test('a crop described anew while the hub was away counts in the days before, too', () => {
  const hub = smallHub({ now: T });
  fill(hub, 'p1', T - 3 * DAY, T, 5);
  hub.core.snapshots.fold();
  const first = days(hub, '2026-05-08')[0]?.degreeDays;
  importFarm(hub.store, farmText({ base: 0 }), T);
  const restarted = smallHub({
    now: T,
    store: { store: hub.store, path: hub.path, again: () => hub.store },
  });
  restarted.core.look();
  const second = days(restarted, '2026-05-08')[0]?.degreeDays ?? 0;
  expect(second - (first ?? 0)).toBeCloseTo(10, 1);
});

test('a zone changed while the hub was away moves the days of the roll-ups', () => {
  const hub = smallHub({ now: T });
  fill(hub, 'p1', T - 3 * DAY, T);
  hub.core.snapshots.fold();
  importFarm(hub.store, farmText({ zone: 'Asia/Kathmandu' }), T);
  const restarted = smallHub({
    now: T,
    store: { store: hub.store, path: hub.path, again: () => hub.store },
  });
  restarted.core.look();
  const id = hub.store.readings.idOf('p1', 'temperature') ?? 0;
  const begins = restarted.core.calendar().bounds('2026-05-08').begins;
  expect(hub.store.rollups.days(id, begins, begins + 1)).toHaveLength(1);
});

test('refusals of more than a day ago are not counted among those of the last 24 hours', () => {
  const hub = smallHub({ now: T });
  hub.send('p1', 'temperature', Date.UTC(2026, 4, 10, 0, 30), 20);
  hub.clock.set(Date.UTC(2026, 4, 9, 0, 30));
  hub.send('p1', 'temperature', Date.UTC(2026, 4, 9, 0, 30), 85);
  hub.clock.set(Date.UTC(2026, 4, 10, 22));
  expect(take(hub).probes.find(({ id }) => id === 'p1')?.doubtful).toBe(0);
});
