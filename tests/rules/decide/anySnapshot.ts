import fc from 'fast-check';
import type { PlaceNow, Snapshot, SpotNow } from '../../../rules/decide/index.ts';
import { celsius, HOUR, instant, MINUTE, minutes } from '../../../rules/units.ts';
import {
  at,
  type Course,
  coolRoom,
  outside,
  pastNights,
  patch,
  probe,
  snapshot,
  spot,
  tunnel,
} from './makeSnapshot.ts';

// Any farm at any hour: every kind of place, with probes that may be missing, silent or late.

const spotNames = ['canopy', 'air', 'under-cover', 'product', 'grass', 'unit'] as const;
const told = fc.constantFrom(true, false, null);
const often = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined, freq: 4 });

const course = (min: number, max: number): fc.Arbitrary<Course> =>
  fc
    .record({
      middle: fc.double({ min, max, noNaN: true }),
      swing: fc.double({ min: 0, max: (max - min) / 4, noNaN: true }),
      lag: fc.integer({ min: 0, max: 1440 }),
      step: fc.double({ min: -4, max: 4, noNaN: true }),
      stepAt: fc.integer({ min: 0, max: 200 }),
    })
    .map(({ middle, swing, lag, step, stepAt }) => (ago: number) => {
      const value = middle + swing * Math.cos((Math.PI * (ago + lag)) / 720);
      return Math.min(max, Math.max(min, value + (ago <= stepAt ? step : 0)));
    });

const anySpot = (now: number, span: [number, number]): fc.Arbitrary<SpotNow> =>
  fc
    .record({
      spot: fc.constantFrom(...spotNames),
      temperature: often(course(...span)),
      humidity: often(course(20, 100)),
      power: often(fc.constantFrom<Course>(0, 3, 400, (ago: number) => (ago % 40 < 20 ? 3 : 400))),
      door: often(fc.constantFrom<Course>(0, 1, (ago: number) => (ago < 12 ? 1 : 0))),
      soil: often(course(0, 100)),
      every: fc.constantFrom(5, 5, 5, 15, 1),
      silent: fc.constantFrom(0, 0, 0, 0, 20, 60, 400),
      hours: fc.constantFrom(48, 48, 3, 1),
      nights: fc.integer({ min: 0, max: 20 }).map((n) => pastNights(n)),
    })
    .map(({ temperature, humidity, power, door, soil, ...rest }) =>
      spot(now, {
        ...rest,
        ...(temperature === undefined ? {} : { temperature }),
        ...(humidity === undefined ? {} : { humidity }),
        ...(power === undefined ? {} : { power }),
        ...(door === undefined ? {} : { door }),
        ...(soil === undefined ? {} : { 'soil-moisture': soil }),
      }),
    );

const spots = (now: number, span: [number, number], most = 3) =>
  fc.array(anySpot(now, span), { maxLength: most });

const water = fc.constantFrom(
  null,
  { below: 30, minutes: null },
  { below: 60, minutes: minutes(9) },
);
const house = (now: number): fc.Arbitrary<PlaceNow> =>
  fc
    .record({
      spots: spots(now, [-5, 42]),
      opened: told,
      crop: fc.constantFrom('basil', 'moonflower', null),
      trays: fc.constantFrom(40, null),
      water,
    })
    .map((wish) => tunnel(wish));
const bed = (now: number): fc.Arbitrary<PlaceNow> =>
  fc
    .record({
      spots: spots(now, [-15, 35]),
      covered: told,
      water,
      cover: fc.record({
        minutes: fc.integer({ min: 0, max: 90 }).map(minutes),
        value: fc.integer({ min: 0, max: 3000 }),
        damage: fc.double({ min: -4, max: 2, noNaN: true }).map(celsius),
        effect: fc.double({ min: 0.1, max: 1, noNaN: true }),
      }),
    })
    .map((wish) => patch(wish));
const store = (now: number): fc.Arbitrary<PlaceNow> =>
  spots(now, [-2, 14]).map((list) => coolRoom({ spots: list }));
const open = (now: number): fc.Arbitrary<PlaceNow> =>
  spots(now, [-15, 35], 2).map((list) => outside(...list));

const keys = ['open-up:long-house', 'close-up:long-house', 'cover:south-patch'];
const moreKeys = ['uncover:south-patch', 'move-produce:cool-room', 'shut-door:cool-room'];

export const anySnapshot: fc.Arbitrary<Snapshot> = fc
  .record({
    day: fc.integer({ min: 0, max: 364 }),
    minute: fc.integer({ min: 0, max: 1439 }),
    lat: fc.constantFrom(45, 45, 52, -37, 70),
  })
  .chain(({ day, minute, lat }) => {
    const now = at('2025-01-01T00:00') + day * 24 * HOUR + minute * MINUTE;
    return fc
      .record({
        places: fc.tuple(house(now), bed(now), store(now), open(now)),
        standing: fc.subarray([...keys, ...moreKeys, 'see-to-unit:cool-room']),
        probes: fc.array(
          fc
            .record({
              place: fc.constantFrom('long-house', 'cool-room', null),
              heardAt: fc.constantFrom(now - 2 * MINUTE, now - 3 * HOUR, null),
              doubtful: fc.constantFrom(0, 80),
              battery: fc.constantFrom({ value: 12, unit: '%' as const, t: instant(now) }, null),
              stuck: fc.constantFrom(
                [],
                [{ quantity: 'temperature' as const, since: instant(now - 8 * HOUR) }],
              ),
            })
            .map(({ heardAt, ...wish }) =>
              probe(now, { ...wish, heardAt: heardAt === null ? null : instant(heardAt) }),
            ),
          { maxLength: 2 },
        ),
      })
      .map((wish) => named(snapshot(now, { ...wish, farm: { lat, lon: 0, wage: 16 } })));
  });

/** Told in one line when a property fails: 48 hours of readings would bury the reason. */
function named(any: Snapshot): Snapshot {
  const probes = any.places.map(({ id, spots: list }) => {
    const each = list.map(({ spot: name, every, columns }) => {
      const ends = Object.entries(columns).map(
        ([quantity, { t, value }]) => `${quantity} ${value.at(-1)} at ${t.at(-1)}`,
      );
      return `${name} each ${every}: ${ends.join(', ')}`;
    });
    return `${id} [${each.join('; ')}]`;
  });
  const line = `${new Date(any.now).toISOString()} at ${any.farm.lat}°: ${probes.join(' ')}`;
  return Object.defineProperty(any, fc.toStringMethod, { value: () => line });
}
