import { expect, test } from 'vitest';
import { nightBounds } from '../../../hub/snapshot/index.ts';
import { HOUR, MINUTE, type SmallHub, smallHub } from '../smallFarm.ts';

const T = Date.UTC(2026, 4, 10, 9);
const DAY = 24 * HOUR;

const nights = ({ core, clock }: SmallHub, place = 'long-house') =>
  core.snapshots.take(clock.now(), [], core.heardAt).places.find(({ id }) => id === place)?.spots[0]
    ?.nights ?? [];
const each = (from: number, to: number, say: (t: number) => void) => {
  for (let t = from; t < to; t += 20 * MINUTE) say(t);
};

// Source: the usual almanac times for 51.9° N, 8.3° W in May, from memory: sunset near 21:15 and
// sunrise near 05:45 local summer time, good to a quarter of an hour.
test('a night lasts from sunset to an hour after sunrise', () => {
  const { core } = smallHub({ now: T });
  const bounds = nightBounds(core.farm(), core.calendar(), '2026-05-10');
  const set = Date.UTC(2026, 4, 9, 20, 15);
  const rise = Date.UTC(2026, 4, 10, 4, 45);
  expect(Math.abs((bounds?.sunset ?? 0) - set)).toBeLessThan(20 * MINUTE);
  expect(Math.abs((bounds?.sunrise ?? 0) - rise)).toBeLessThan(20 * MINUTE);
  expect(bounds?.to).toBe((bounds?.sunrise ?? 0) + HOUR);
});

test('the low is the lowest between sunset and an hour after sunrise, not of the day', () => {
  const hub = smallHub({ now: T });
  each(T - 2 * DAY, T, (t) => {
    const hour = new Date(t).getUTCHours();
    hub.send('p1', 'temperature', t, hour === 14 ? 11 : hour === 3 ? 11.5 : 14);
  });
  hub.core.snapshots.fold();
  expect(nights(hub).at(-1)).toMatchObject({ night: '2026-05-10', low: 11.5 });
});

test('a night that is not over is not among the past ones', () => {
  const hub = smallHub({ now: Date.UTC(2026, 4, 10, 3) });
  each(T - 3 * DAY, Date.UTC(2026, 4, 10, 3), (t) => hub.send('p1', 'temperature', t, 12));
  expect(nights(hub).at(-1)?.night).toBe('2026-05-09');
});

test('a doubtful reading is not the low of its night', () => {
  const hub = smallHub({ now: T });
  each(T - 2 * DAY, T, (t) => hub.send('p1', 'temperature', t, 12));
  hub.send('p1', 'temperature', Date.UTC(2026, 4, 10, 1, 7), -127);
  hub.core.snapshots.fold();
  expect(nights(hub).at(-1)?.low).toBe(12);
});

test('the evening is known from readings around two hours after sunset only', () => {
  const hub = smallHub({ now: T });
  const bounds = nightBounds(hub.core.farm(), hub.core.calendar(), '2026-05-10');
  const evening = (bounds?.sunset ?? 0) + 2 * HOUR;
  hub.send('p1', 'temperature', evening - 2 * HOUR, 15);
  hub.send('p1', 'temperature', evening - 5 * MINUTE, 10);
  hub.send('p1', 'temperature', evening + 5 * MINUTE, 9);
  hub.core.snapshots.fold();
  expect(nights(hub).at(-1)?.evening?.temperature).toBeCloseTo(9.5, 9);
});

test('a dew point taken from outside is made again when outside readings come late', () => {
  const hub = smallHub({ now: T });
  each(T - 2 * DAY, T, (t) => hub.send('p1', 'temperature', t, 12));
  hub.core.snapshots.fold();
  expect(nights(hub).at(-1)?.evening?.dewPoint).toBeNull();
  each(T - 2 * DAY, T, (t) => {
    hub.send('mast', 'temperature', t, 10);
    hub.send('mast', 'humidity', t, 80);
  });
  hub.core.snapshots.fold();
  const late = nights(hub).at(-1)?.evening?.dewPoint;
  const restarted = smallHub({
    now: T,
    store: { store: hub.store, path: hub.path, again: () => hub.store },
  });
  hub.store.placeFacts.dropAll();
  expect(late).toBe(nights(restarted).at(-1)?.evening?.dewPoint);
});
