import { type PlaceDay, type PlaceRule, placeHours } from '../../../rules/days/index.ts';
import { decide, type Snapshot, type TraysStanding } from '../../../rules/decide/index.ts';
import { celsius, HOUR, instant, percent } from '../../../rules/units.ts';
import { at, basil, outside, place, snapshot, spot, tunnel } from './makeSnapshot.ts';

// Places with a truth of their own, made hour by hour, and a farm whose trays stand in one of them.

export const rule: PlaceRule = {
  ...{ band: [18, 28], heatLimit: 32, chill: 11 },
  wet: { at: 90, below: 87 },
};
const DAY = 24 * HOUR;

/** °C and % at an hour of a day; null for a silent hour. */
export type HourCurve = (day: number, hour: number) => readonly [number, number] | null;

/** Whole days from `first` on, as a place with this curve was to the crop. */
export function daysOf(
  curve: HourCurve,
  first: string,
  count: number,
  { open = null as boolean | null, rule: asked = rule } = {},
): PlaceDay[] {
  const begin = Date.parse(`${first}T00:00:00Z`);
  return Array.from({ length: count }, (_, day) => {
    const from = begin + day * DAY;
    const air = [];
    for (let hour = -3; hour <= 24; hour++) {
      const inDay = Math.floor(hour / 24);
      const read = curve(day + inDay, hour - 24 * inDay);
      if (read === null) continue;
      const t = instant(from + hour * HOUR);
      air.push({ t, temperature: celsius(read[0]), humidity: percent(read[1]) });
    }
    const window = { from: instant(from), to: instant(from + DAY) };
    const name = new Date(from).toISOString().slice(0, 10);
    return { day: name, ...placeHours(air, asked, window, () => open), disease: null };
  });
}

/** A day's curve around a middle, warmest at 15 o'clock. */
export const swing = (middle: number, by: number, damp = 60): HourCurve => {
  return (_, hour) => [middle - by * Math.cos(((hour - 3) / 24) * 2 * Math.PI), damp];
};

export const stand = (wish: Partial<TraysStanding> = {}): TraysStanding => ({
  ...{ batch: 'basil-1', crop: 'basil', cropName: 'Basil', place: 'long-house', trays: 30 },
  ...{ daysLeft: 14, daysFrom: 'told', mouldy: false, movedAt: null, left: [] },
  ...{ minutes: null, askedTo: null },
  ...wish,
});

export const guess = {
  ...{ mean: 0.002, low: 0.0005, high: 0.006, batches: 0 },
  from: 'guess' as const,
};

export type TrayWish = {
  readonly here: readonly PlaceDay[];
  readonly there: readonly PlaceDay[];
  readonly outside?: readonly PlaceDay[];
  readonly stands?: readonly TraysStanding[];
  readonly capacity?: number | null;
  /** Trays of others that stand there. */
  readonly others?: number;
  readonly now?: number;
  readonly vents?: boolean;
  /** What was said of shade in Long House. */
  readonly shade?: { readonly shadedDays: number; readonly notShaded: boolean };
  readonly more?: Partial<Snapshot>;
};

export function trayFarm(wish: TrayWish): Snapshot {
  const now = wish.now ?? at('2025-06-21T09:00');
  const { here, there, stands = [stand()], capacity = 40, others = 0, vents = false } = wish;
  const bare = { shadedDays: 0, notShaded: false };
  const { shade = bare } = wish;
  const air = spot(now, { temperature: 22, humidity: 60 });
  const mast = spot(now, { spot: 'air', probe: 'mast', temperature: 20, humidity: 60 });
  const places = [
    tunnel({ vents, crop: 'basil', spots: [air] }),
    place({ id: 'sun-house', kind: 'tunnel', crop: 'basil', spots: [air] }),
    outside(mast),
  ];
  const standing = (id: string) =>
    stands.filter((one) => one.place === id).reduce((sum, { trays }) => sum + trays, 0);
  return snapshot(now, {
    places,
    crops: [basil],
    trays: {
      standing: stands,
      places: [
        {
          id: 'long-house',
          name: 'Long House',
          capacity: 40,
          standing: standing('long-house'),
          ...shade,
        },
        {
          id: 'sun-house',
          name: 'Sun House',
          capacity,
          standing: standing('sun-house') + others,
          ...bare,
        },
      ],
      crops: [
        {
          crop: 'basil',
          places: [
            { place: 'long-house', days: here },
            { place: 'sun-house', days: there },
          ],
          outside: wish.outside ?? [],
          share: guess,
        },
      ],
    },
    ...wish.more,
  });
}

export const moves = (given: Snapshot) =>
  decide(given).decisions.filter(({ kind }) => kind === 'move-trays');

/** Numbers by chance that are the same each time (mulberry32), about normal by twelve of them. */
export function chance(seed: number) {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
  return {
    next,
    normal: () => Array.from({ length: 12 }, next).reduce((sum, value) => sum + value, -6),
  };
}
