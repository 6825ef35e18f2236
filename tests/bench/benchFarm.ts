import type { Quantity } from '../../hub/contract/index.ts';

// An invented farm for measuring: twenty places, up to three probes in each, every probe with
// temperature and humidity. No such farm exists; its numbers are round and mean nothing.

export const PLACES = 20;
export const QUANTITIES = ['temperature', 'humidity'] as const satisfies readonly Quantity[];

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const YEAR = 365.25 * DAY;

export const placeName = (index: number) =>
  index === 0 ? 'outside' : index === 1 ? 'cool-room' : `house-${index}`;
export const probeId = (index: number) => `bench-${String(index).padStart(2, '0')}`;

function placeLines(index: number): string {
  const head = `  - { id: ${placeName(index)}, name: Place ${index},`;
  if (index === 0) return `${head} kind: outdoor }`;
  if (index === 1) return `${head} kind: cool-room, setPoint: 3, limit: 6, value: 500 }`;
  if (index % 4 === 0)
    return `${head} kind: patch, crop: berries, cover: { minutes: 40, value: 200, damage: -1 } }`;
  return `${head} kind: tunnel, vents: true, crop: leaves, trays: 20 }`;
}

function spotOf(index: number): string {
  const tier = Math.floor(index / PLACES);
  const place = index % PLACES;
  if (place === 0) return ['air', 'grass', 'canopy'][tier] ?? 'air';
  if (place === 1) return ['air', 'product', 'unit'][tier] ?? 'air';
  return ['canopy', 'air', 'under-cover'][tier] ?? 'air';
}

/** The farm file with this many probes, at most sixty. */
export function benchFarm(probes: number, every = '5m'): string {
  const names = Array.from({ length: probes }, (_, i) => i);
  return [
    'farm: { name: Bench (invented), zone: Europe/Dublin, lat: 52, lon: -7, money: EUR, wage: 15 }',
    'places:',
    ...Array.from({ length: PLACES }, (_, i) => placeLines(i)),
    'probes:',
    ...names.map(
      (i) =>
        `  - { id: ${probeId(i)}, place: ${placeName(i % PLACES)}, spot: ${spotOf(i)}, every: ${every} }`,
    ),
    'crops:',
    '  - { id: leaves, base: 8, band: [14, 24], heatLimit: 30, chill: 5, price: 20, perTray: 0.4 }',
    '  - { id: berries, base: 5, band: [14, 24], heatLimit: 30, price: 9, perTray: 2 }',
    '',
  ].join('\n');
}

/** The same wobble, -1..1, for the same numbers: every run measures the same work. */
const wobble = (seed: number, t: number) => {
  const x = Math.sin(seed * 12.9898 + (t / 60_000) * 78.233) * 43758.5453;
  return 2 * (x - Math.floor(x)) - 1;
};

/** A smooth invented value: the year's course, the day's course and a little noise. */
export function valueAt(probe: number, quantity: Quantity, t: number): number {
  const day = -Math.cos((2 * Math.PI * (t % DAY)) / DAY - 0.8); // coldest near three in the morning
  const noise = wobble(probe + (quantity === 'humidity' ? 100 : 0), t);
  if (probe % PLACES === 1)
    return quantity === 'temperature'
      ? round(3.5 + 0.5 * Math.sin((2 * Math.PI * t) / (0.7 * HOUR)) + 0.3 * noise)
      : round(88 + noise);
  const front = Math.sin((2 * Math.PI * t) / (5.3 * DAY)); // weather that comes and goes
  if (quantity === 'humidity') return round(82 - 14 * day + 5 * front + noise);
  const season = -Math.cos((2 * Math.PI * t) / YEAR); // 1 January is near the coldest
  return round(11 + 7 * season + 5 * day - 2 * front + (probe % 7) * 0.3 + 0.2 * noise);
}
const round = (value: number) => Math.round(value * 10) / 10;
