import fc from 'fast-check';
import { expect, test } from 'vitest';
import { calendarOf } from '../../../hub/clock.ts';
import type { Amendment, Store, StoredReading } from '../../../hub/store/index.ts';
import { tempStore } from '../tempStore.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

const dayAroundOf = (zone: string) => {
  const calendar = calendarOf(zone);
  return (t: number) => calendar.bounds(calendar.dayOf(t));
};

type Rows = Map<number, { t: number; n: number; min: number; max: number; sum: number }>;
/** Roll-ups made the plain way, from all good readings at once. */
function fresh(points: readonly { t: number; value: number }[], begin: (t: number) => number) {
  const rows: Rows = new Map();
  for (const { t, value } of points) {
    const key = begin(t);
    const row = rows.get(key) ?? { t: key, n: 0, min: Infinity, max: -Infinity, sum: 0 };
    rows.set(key, {
      t: key,
      n: row.n + 1,
      min: Math.min(row.min, value),
      max: Math.max(row.max, value),
      sum: row.sum + value,
    });
  }
  return [...rows.values()].sort((a, b) => a.t - b.t);
}

function agree(store: Store, probe: string, quantity: string, zone: string) {
  const id = store.readings.idOf(probe, quantity);
  if (id === undefined) return;
  const good = store.readings.between(probe, quantity, 0, Number.MAX_SAFE_INTEGER);
  const dayAround = dayAroundOf(zone);
  const hours = store.rollups.hours(id, 0, Number.MAX_SAFE_INTEGER);
  const days = store.rollups.days(id, 0, Number.MAX_SAFE_INTEGER);
  expect(hours).toEqual(fresh(good, (t) => Math.floor(t / HOUR) * HOUR));
  expect(days).toEqual(fresh(good, (t) => dayAround(t).begins));
}

// Whole numbers, so that sums do not depend on the order of adding.
const zoneAndStart = fc.constantFrom(
  ['Europe/Dublin', Date.UTC(2026, 2, 28)], // the 29th has 23 hours
  ['Europe/Dublin', Date.UTC(2026, 9, 24)], // the 25th has 25
  ['Australia/Lord_Howe', Date.UTC(2026, 3, 4)], // 24.5 hours, days begin on the half hour
  ['Asia/Kathmandu', Date.UTC(2026, 5, 1)], // days begin at a quarter past an hour of UTC
  ['America/Havana', Date.UTC(2026, 2, 7)], // the day begins at 01:00
) as fc.Arbitrary<[string, number]>;
const step = fc.oneof(
  {
    weight: 5,
    arbitrary: fc.record({
      kind: fc.constant('add' as const),
      inbox: fc.boolean(),
      readings: fc.array(
        fc.record({
          at: fc.integer({ min: 0, max: 3 * 24 * 12 }),
          value: fc.integer({ min: -30, max: 40 }),
          probe: fc.constantFrom('a', 'b'),
          flag: fc.constantFrom(null, null, null, 'spike'),
        }),
        { minLength: 1, maxLength: 30 },
      ),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('amend' as const),
      from: fc.integer({ min: 0, max: 800 }),
      span: fc.integer({ min: 0, max: 300 }),
      flag: fc.constantFrom(null, 'stuck'),
    }),
  },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('fold' as const) }) },
);

test('late, repeated, back-filled and amended readings give the roll-ups of a fresh build', () => {
  fc.assert(
    fc.property(zoneAndStart, fc.array(step, { maxLength: 12 }), ([zone, start], steps) => {
      const { store } = tempStore();
      const dayAround = dayAroundOf(zone);
      store.rollups.daysAre(dayAround);
      for (const one of steps) {
        if (one.kind === 'fold') store.rollups.fold(dayAround);
        else if (one.kind === 'amend')
          store.readings.amend([
            {
              probe: 'a',
              quantity: 'temperature',
              from: start + one.from * 5 * MINUTE,
              to: start + (one.from + one.span) * 5 * MINUTE,
              flag: one.flag,
              was: one.flag === null ? 'stuck' : null,
            } satisfies Amendment,
          ]);
        else {
          const readings = one.readings.map(({ at, value, probe, flag }) =>
            at5(start, at, value, probe, flag),
          );
          if (one.inbox) keepAll(store, readings);
          else store.readings.add(readings);
        }
      }
      // What changed in place is folded; what waits in the inbox is counted in when it is asked for.
      store.rollups.foldWhenDue(dayAround, start);
      for (const probe of ['a', 'b']) agree(store, probe, 'temperature', zone);
      store.rollups.fold(dayAround);
      for (const probe of ['a', 'b']) agree(store, probe, 'temperature', zone);
      expect(store.rollups.isStale()).toBe(false);
      store.close();
    }),
    { numRuns: 60 },
  );
});

const keepAll = (store: Store, readings: readonly StoredReading[]) =>
  store.keep({ readings, amendments: [], refusals: [], heard: [] }, 0, () => {});

const at5 = (
  start: number,
  at: number,
  value: number,
  probe: string,
  flag: string | null,
): StoredReading => ({
  probe,
  quantity: 'temperature',
  t: start + at * 5 * MINUTE,
  value,
  raw: null,
  flag,
});

const T = Date.UTC(2026, 4, 10);
const one = (t: number, value: number, quantity = 'temperature'): StoredReading => ({
  probe: 'p1',
  quantity,
  t,
  value,
  raw: null,
  flag: null,
});

test('folding tells every stretch that changed, whichever quantity it was', () => {
  const { store } = tempStore();
  store.readings.add([one(T, 50, 'humidity')]);
  store.readings.add([one(T, 10), ...Array.from({ length: 9 }, (_, i) => one(T + i * HOUR, 10))]);
  store.readings.add([one(T + 1, 1, 'power')]);
  const changed = store.rollups.fold(dayAroundOf('UTC'));
  for (let hour = 0; hour < 9; hour++)
    expect(
      changed.some(
        ({ probe, from, to }) => probe === 'p1' && from <= T + hour * HOUR && T + hour * HOUR < to,
      ),
      `hour ${hour} among ${JSON.stringify(changed)}`,
    ).toBe(true);
});

test('a fold by another process does not leave this one with roll-ups that stay behind', () => {
  const { store, again } = tempStore();
  const other = again();
  store.readings.add([one(T, 10)]);
  other.rollups.fold(dayAroundOf('UTC'));
  store.readings.add([one(T + MINUTE, 20)]);
  store.rollups.fold(dayAroundOf('UTC'));
  agree(store, 'p1', 'temperature', 'UTC');
});

test('when the zone changes all days are made again', () => {
  const { store } = tempStore();
  store.readings.add(Array.from({ length: 72 }, (_, i) => one(T + i * HOUR, i)));
  store.rollups.fold(dayAroundOf('UTC'));
  store.rollups.restaleAll();
  store.rollups.fold(dayAroundOf('Asia/Kathmandu'));
  agree(store, 'p1', 'temperature', 'Asia/Kathmandu');
});
