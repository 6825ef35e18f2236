import type {
  Column,
  Crop,
  NightRecord,
  PlaceNow,
  ProbeNow,
  Quantity,
  Snapshot,
  SpotName,
  SpotNow,
} from '../../../rules/decide/index.ts';
import { celsius, HOUR, instant, MINUTE, minutes, percent } from '../../../rules/units.ts';

// Small makers of snapshots, all of one invented farm at 45° N on the zero meridian, whose clock
// is UTC. Sunrise and sunset there on 21 June and 21 December are those of tests on sunTimes.

const utc = (text: string) => Date.parse(`${text}:00Z`);
export const at = (text: string) => instant(utc(text));

/** A value by time: constant, or worked out from minutes before `now` (0 = now). */
export type Course = number | ((minutesAgo: number) => number);
const courseAt = (course: Course, ago: number) =>
  typeof course === 'number' ? course : course(ago);

/** Readings each `every` minutes over the last `hours`, none newer than `until` minutes ago. */
export function column(now: number, course: Course, every = 5, hours = 48, until = 0): Column {
  const t = [];
  const value = [];
  for (let ago = Math.floor((hours * 60) / every) * every; ago >= until; ago -= every) {
    t.push(instant(now - ago * MINUTE));
    value.push(courseAt(course, ago));
  }
  return { t, value };
}

type SpotWish = {
  readonly spot?: SpotName;
  readonly probe?: string;
  readonly every?: number;
  readonly hours?: number;
  /** Minutes since the newest reading. */
  readonly silent?: number;
  readonly nights?: readonly NightRecord[];
} & Partial<Record<Quantity, Course>>;

export function spot(now: number, wish: SpotWish): SpotNow {
  const { spot: name = 'canopy', probe = `p-${name}`, every = 5, hours = 48, silent = 0 } = wish;
  const columns: Partial<Record<Quantity, Column>> = {};
  const measured = ['temperature', 'humidity', 'power', 'door', 'energy', 'soil-moisture'] as const;
  for (const quantity of measured) {
    const course = wish[quantity];
    if (course !== undefined) columns[quantity] = column(now, course, every, hours, silent);
  }
  const { temperature, humidity } = columns;
  const air =
    temperature === undefined || humidity === undefined
      ? []
      : temperature.t.map((t, i) => ({
          t,
          temperature: celsius(temperature.value[i] ?? Number.NaN),
          humidity: percent(humidity.value[i] ?? Number.NaN),
        }));
  return {
    spot: name,
    probe,
    every: minutes(every),
    columns,
    air,
    nights: wish.nights ?? [],
  };
}

export const place = (wish: Partial<PlaceNow> & Pick<PlaceNow, 'id' | 'kind'>): PlaceNow => ({
  crop: null,
  trays: null,
  vents: false,
  opened: null,
  covered: null,
  wet: { at: percent(90), below: percent(87) },
  cover: null,
  coolRoom: null,
  spots: [],
  ...wish,
});

export const tunnel = (wish: Partial<PlaceNow> = {}) =>
  place({ id: 'long-house', kind: 'tunnel', vents: true, ...wish });
export const outside = (...spots: readonly SpotNow[]) =>
  place({ id: 'outside', kind: 'outdoor', spots });
export const patch = (wish: Partial<PlaceNow> = {}) =>
  place({
    id: 'south-patch',
    kind: 'patch',
    cover: { minutes: minutes(35), value: 900, damage: celsius(-2.2), effect: 0.8 },
    ...wish,
  });
export const coolRoom = (wish: Partial<PlaceNow> = {}) =>
  place({
    id: 'cool-room',
    kind: 'cool-room',
    coolRoom: { setPoint: celsius(3), limit: celsius(5), value: 600 },
    ...wish,
  });

export const basil: Crop = {
  id: 'basil',
  base: celsius(10),
  band: [celsius(18), celsius(28)],
  heatLimit: celsius(32),
  chill: celsius(11),
  disease: ['basil-downy-mildew'],
  price: 30,
  perTray: 0.35,
};

export const probe = (now: number, wish: Partial<ProbeNow> = {}): ProbeNow => ({
  id: 'p1',
  place: 'long-house',
  spot: 'canopy',
  every: minutes(5),
  placedAt: instant(now - 1000 * HOUR),
  heardAt: instant(now - 2 * MINUTE),
  stuck: [],
  doubtful: 0,
  battery: null,
  ...wish,
});

/** Nights whose low was `drop` under the evening and `fall` under the afternoon, give or take. */
export function pastNights(count: number, { drop = 5, fall = 9 } = {}): NightRecord[] {
  return Array.from({ length: count }, (_, i) => {
    const low = -4 + ((i * 7) % 11) * 0.8;
    const wobble = ((i % 3) - 1) * 0.4;
    return {
      night: `2025-10-${String(i + 1).padStart(2, '0')}`,
      evening: { temperature: celsius(low + drop + wobble), dewPoint: null },
      afternoon: { temperature: celsius(low + fall + 2 * wobble), dewPoint: null },
      low: celsius(low),
    };
  });
}

export function snapshot(now: number, wish: Partial<Omit<Snapshot, 'now'>> = {}): Snapshot {
  const begins = Math.floor(now / (24 * HOUR)) * 24 * HOUR;
  return {
    now: instant(now),
    day: {
      name: new Date(begins).toISOString().slice(0, 10),
      begins: instant(begins),
      ends: instant(begins + 24 * HOUR),
    },
    farm: { lat: 45, lon: 0, wage: 16 },
    crops: [basil],
    places: [],
    probes: [],
    standing: [],
    ...wish,
  };
}
