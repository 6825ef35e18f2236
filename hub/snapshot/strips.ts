import type { Outlook, PlaceNow, Snapshot } from '../../rules/decide/index.ts';
import { sunTimes } from '../../rules/heat/index.ts';
import { instant } from '../../rules/units.ts';
import { wetSpells } from '../../rules/wetness/index.ts';
import { longestGap } from './days.ts';
import { SPELL_GAP, speaker } from './nowFacts.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
/** One point in this time is enough for the eye. Ours. */
const STEP = 10 * MINUTE;
/** Where the sun neither rises nor sets: local hours to fall back on. */
const NO_DUSK = 18 * HOUR;
const NO_DAWN = 6 * HOUR;

export type StripFacts = {
  readonly place: string;
  readonly spot: string | null;
  readonly t: number[];
  readonly temperature: (number | null)[];
  readonly humidity: (number | null)[];
  readonly wetSpells: { from: number; to: number; wetHours: number }[];
  readonly limits: {
    value: number;
    what: 'damage' | 'chill' | 'heat' | 'cool-room-limit' | 'set-point';
  }[];
  readonly fan: { t: number; low: number; middle: number; high: number }[];
};
export type StripsFacts = {
  readonly from: number;
  readonly to: number;
  readonly nights: { from: number; to: number }[];
  readonly scale: { min: number; max: number };
  readonly strips: StripFacts[];
};

function sun(snapshot: Snapshot, days: number) {
  const { begins } = snapshot.day;
  const { lat, lon } = snapshot.farm;
  const { rise, set } = sunTimes(instant(begins + 12 * HOUR + days * DAY), lat, lon);
  const midnight = begins + days * DAY;
  return { rise: rise ?? midnight + NO_DAWN, set: set ?? midnight + NO_DUSK };
}

function limitsOf(snapshot: Snapshot, place: PlaceNow): StripFacts['limits'] {
  if (place.coolRoom)
    return [
      { value: place.coolRoom.setPoint, what: 'set-point' },
      { value: place.coolRoom.limit, what: 'cool-room-limit' },
    ];
  if (place.cover) return [{ value: place.cover.damage, what: 'damage' }];
  const crop = snapshot.crops.find(({ id }) => id === place.crop);
  const limits: StripFacts['limits'] = [];
  // At freezing and below it is not chilling any more.
  if (crop && crop.chill !== null)
    limits.push({ value: crop.chill, what: crop.chill > 0 ? 'chill' : 'damage' });
  if (crop && crop.heatLimit !== null) limits.push({ value: crop.heatLimit, what: 'heat' });
  return limits;
}

function strip(snapshot: Snapshot, outlook: Outlook, place: PlaceNow, from: number): StripFacts {
  const main = speaker(place);
  const column = main?.columns.temperature ?? { t: [], value: [] };
  const gap = longestGap((main?.every ?? 5) * MINUTE) * MINUTE;
  const air = main?.air ?? [];
  const facts: StripFacts = {
    place: place.id,
    spot: main?.spot ?? null,
    t: [],
    temperature: [],
    humidity: [],
    wetSpells: [],
    limits: limitsOf(snapshot, place),
    fan: [...(outlook.frost.find((f) => f.place === place.id && f.spot === main?.spot)?.fan ?? [])],
  };
  let a = 0;
  let last = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < column.t.length; i++) {
    const t = column.t[i] ?? 0;
    if (t < from || (t - last < STEP && i < column.t.length - 1)) continue;
    if (t - last > Math.max(gap, STEP) && facts.t.length > 0) {
      facts.t.push((t + last) / 2);
      facts.temperature.push(null);
      facts.humidity.push(null);
    }
    last = t;
    while (a + 1 < air.length && (air[a]?.t ?? 0) < t) a++;
    facts.t.push(t);
    facts.temperature.push(column.value[i] ?? null);
    facts.humidity.push(air[a]?.t === t ? (air[a]?.humidity ?? null) : null);
  }
  if (place.kind !== 'cool-room' && air.length > 0)
    facts.wetSpells.push(
      ...wetSpells(air, {
        ...place.wet,
        mergeGapHours: SPELL_GAP,
        maxGapMinutes: longestGap((main?.every ?? 5) * MINUTE),
      })
        .filter(({ to }) => to > from)
        .map(({ from: begin, to, wetHours }) => ({ from: Math.max(begin, from), to, wetHours })),
    );
  return facts;
}

/** Everything the stacked strips show, from yesterday's dusk to tomorrow's dawn. */
export function stripsFacts(snapshot: Snapshot, outlook: Outlook): StripsFacts {
  const days = [-1, 0, 1].map((day) => sun(snapshot, day));
  const [yesterday, today, tomorrow] = days as [
    (typeof days)[0],
    (typeof days)[0],
    (typeof days)[0],
  ];
  const from = yesterday.set;
  const strips = snapshot.places.map((place) => strip(snapshot, outlook, place, from));
  let min = Number.POSITIVE_INFINITY;
  let max = Number.NEGATIVE_INFINITY;
  for (const [i, { temperature, fan }] of strips.entries()) {
    if (snapshot.places[i]?.kind === 'cool-room') continue;
    for (const value of temperature)
      if (value !== null) {
        min = Math.min(min, value);
        max = Math.max(max, value);
      }
    for (const { low, high } of fan) {
      min = Math.min(min, low);
      max = Math.max(max, high);
    }
  }
  return {
    from,
    to: tomorrow.rise,
    nights: [
      { from: yesterday.set, to: today.rise },
      { from: today.set, to: tomorrow.rise },
    ],
    scale: min <= max ? { min: Math.floor(min - 1), max: Math.ceil(max + 1) } : { min: 0, max: 20 },
    strips,
  };
}
