import fc from 'fast-check';
import type { Snapshot } from '../../../rules/decide/index.ts';
import { celsius, HOUR, instant, MINUTE, minutes } from '../../../rules/units.ts';
import {
  at,
  coolRoom,
  outside,
  pastNights,
  patch,
  snapshot,
  spot,
  tunnel,
} from './makeSnapshot.ts';

const degrees = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 });

/**
 * A farm where every probe speaks and much asks to be done: tunnels hot or wet, a patch near its
 * damage, a cool room in trouble. Any farm at any hour is rarely all that.
 */
export const busyDay: fc.Arbitrary<Snapshot> = fc
  .record({
    day: fc.integer({ min: 0, max: 364 }),
    minute: fc.constantFrom(90, 480, 540, 720, 900, 960, 1080, 1200, 1380),
    inside: degrees(5, 40),
    humidity: fc.constantFrom(40, 80, 88, 96),
    out: degrees(-5, 30),
    outHumidity: fc.integer({ min: 30, max: 100 }),
    patch: degrees(-3, 20),
    room: degrees(2, 7),
    rises: fc.boolean(),
    power: fc.constantFrom(0, 3, 400),
    nights: fc.constantFrom(0, 7, 20),
    opened: fc.constantFrom(null, true, false),
    covered: fc.constantFrom(null, true, false),
    crop: fc.constantFrom('basil', null),
    rain: fc.constantFrom(null, 0, 9),
    gains: fc.constantFrom(0, 4, 12),
    ready: fc.constantFrom(null, 0.3, 0.8),
    cutIn: fc.constantFrom(null, 20, 60),
  })
  .map((wish) => {
    const now = at('2025-01-01T00:00') + wish.day * 24 * HOUR + wish.minute * MINUTE;
    const nights = pastNights(wish.nights);
    const swing = (middle: number) => (ago: number) =>
      middle / 10 + 4 * Math.sin(((ago - wish.minute) * Math.PI) / 720);
    const house = spot(now, { temperature: wish.inside / 10, humidity: wish.humidity });
    const open = { temperature: swing(wish.out), humidity: wish.outHumidity, nights };
    const bed = { spot: 'under-cover' as const, temperature: swing(wish.patch), nights };
    const warming = (ago: number) =>
      wish.room / 10 + Math.max(0, 90 - ago) / (wish.rises ? 60 : 1e9);
    const hoursAhead = [1, 2, 3].map((hours) => instant(now + hours * HOUR));
    const today = instant(Math.floor(now / (24 * HOUR)) * 24 * HOUR);
    return snapshot(now, {
      sowings: {
        rows: [
          {
            ...{ place: 'long-house', crop: 'Basil', trays: 3, kilograms: 1.2 },
            ...{ pricePerKilogram: 30, on: today, late: wish.ready === 0.3 },
            ...{ delivery: '2025-12-31', ready: wish.ready, batches: wish.nights },
            minutesPerTray: null,
          },
        ],
        untimed: [{ place: 'long-house', id: 'cress', crop: 'Cress' }],
      },
      harvests: [
        {
          ...{ id: 'basil-1', place: 'long-house', crop: 'Basil', trays: 4, kilograms: 1.4 },
          ...{ pricePerKilogram: 30, ready: wish.ready, minutesPerTray: null },
          seenReady: wish.opened === true ? instant(now - HOUR) : null,
          readyAt: wish.nights === 0 ? null : instant(now - wish.gains * HOUR),
          overAt: wish.covered === null ? null : instant(now + wish.room * HOUR),
          delivery:
            wish.cutIn === null
              ? null
              : { day: '2025-06-01', at: instant(now + wish.cutIn * HOUR) },
        },
      ],
      pushed:
        wish.rain === null
          ? []
          : [
              {
                source: 'met',
                issuedAt: instant(now - HOUR),
                temperature: { t: [], value: [] },
                rain: { t: hoursAhead, value: hoursAhead.map(() => (wish.rain ?? 0) / 3) },
                nights: [],
              },
            ],
      places: [
        tunnel({ spots: [house], opened: wish.opened, crop: wish.crop, trays: 40 }),
        outside(spot(now, { spot: 'air', probe: 'mast', ...open })),
        patch({
          spots: [spot(now, bed), spot(now, { ...bed, spot: 'air' })],
          covered: wish.covered,
          coverNights: Array.from({ length: wish.gains }, (_, i) => ({ gain: (i % 5) / 2 })),
          picking: {
            minutes: minutes(60),
            value: 120,
            damage: celsius(-2.2),
            damageFrom: 'told in the farm file',
          },
        }),
        coolRoom({
          spots: [
            spot(now, { spot: 'air', probe: 'cold', temperature: warming }),
            spot(now, {
              spot: 'unit',
              probe: 'meter',
              power: (ago) => (ago < 50 ? wish.power : ago % 40 < 20 ? 3 : 400),
            }),
          ],
        }),
      ],
    });
  });
