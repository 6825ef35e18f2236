import fc from 'fast-check';
import { expect, test } from 'vitest';
import { makeWindow, WINDOW } from '../../../hub/snapshot/window.ts';
import type { Amendment, StoredReading } from '../../../hub/store/index.ts';
import { tempStore } from '../tempStore.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const T = Date.UTC(2026, 4, 10);

const reading = (t: number, value: number, flag: string | null = null): StoredReading => ({
  probe: 'p1',
  quantity: 'temperature',
  t,
  value,
  raw: null,
  flag,
});

/** A window over a store, both told the same, as after each commit. */
function windowed() {
  const { store } = tempStore();
  let now = T;
  const window = makeWindow(store, () => now);
  const commit = (readings: StoredReading[], amendments: Amendment[] = []) => {
    store.transaction(() => {
      store.readings.add(readings);
      store.readings.amend(amendments);
    });
    window.add(readings, amendments);
  };
  const agrees = () => {
    const { t, value } = window.column('p1', 'temperature');
    const inWindow = t
      .map((at, i) => ({ t: at, value: value[i] }))
      .filter((p) => p.t >= now - WINDOW);
    expect(inWindow).toEqual(
      store.readings.between('p1', 'temperature', now - WINDOW, Number.MAX_SAFE_INTEGER),
    );
    const fresh = makeWindow(store, () => now);
    expect(window.stuckSince('p1', 'temperature')).toBe(fresh.stuckSince('p1', 'temperature'));
  };
  return {
    store,
    window,
    commit,
    agrees,
    set: (t: number) => {
      now = t;
    },
  };
}

const step = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({
      ahead: fc.integer({ min: 0, max: 400 }), // minutes the clock moves on
      late: fc.array(fc.integer({ min: 0, max: 4000 }), { maxLength: 6 }), // minutes before now
      flag: fc.constantFrom(null, null, null, 'spike'),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({ from: fc.nat(3000), span: fc.nat(600), stuck: fc.boolean() }),
  },
);

test('after new, late, repeated and amended readings the window holds what the store holds', () => {
  fc.assert(
    fc.property(fc.array(step, { maxLength: 30 }), (steps) => {
      const { commit, agrees, set, store } = windowed();
      let now = T;
      agrees();
      for (const one of steps) {
        if ('ahead' in one) {
          now += one.ahead * MINUTE;
          set(now);
          commit(one.late.map((late) => reading(now - late * MINUTE, late % 50, one.flag)));
        } else {
          const from = now - one.from * MINUTE;
          const to = from + one.span * MINUTE;
          const flag = one.stuck ? 'stuck' : null;
          commit(
            [],
            [
              {
                probe: 'p1',
                quantity: 'temperature',
                from,
                to,
                flag,
                was: one.stuck ? null : 'stuck',
              },
            ],
          );
        }
        agrees();
      }
      store.close();
    }),
    { numRuns: 60 },
  );
});

test('the newest good value is told, never a doubtful one', () => {
  const { window, commit } = windowed();
  expect(window.newest('p1', 'temperature')).toBeNull();
  commit([reading(T - 2, 20), reading(T - 1, 85, 'out-of-range')]);
  expect(window.newest('p1', 'temperature')).toEqual({ t: T - 2, value: 20 });
});

test('a stuck stretch is known from its first reading until the value moves', () => {
  const { window, commit } = windowed();
  window.column('p1', 'temperature');
  commit([reading(T - 8 * HOUR, 5), reading(T - 7 * HOUR, 5)]);
  commit(
    [reading(T - HOUR, 5, 'stuck')],
    [
      {
        probe: 'p1',
        quantity: 'temperature',
        from: T - 8 * HOUR,
        to: T - HOUR - 1,
        flag: 'stuck',
        was: null,
      },
    ],
  );
  expect(window.stuckSince('p1', 'temperature')).toBe(T - 8 * HOUR);
  commit([reading(T, 5.2)]);
  expect(window.stuckSince('p1', 'temperature')).toBeNull();
});

test('each change gives a new version, so that what was made from it is made again', () => {
  const { window, commit } = windowed();
  const versions = [window.column('p1', 'temperature').version];
  for (const t of [T - 5, T - 3, T - 4]) {
    commit([reading(t, 20)]);
    versions.push(window.column('p1', 'temperature').version);
  }
  expect(new Set(versions).size).toBe(4);
});
