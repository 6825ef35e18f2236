import { calendarOf } from '../../../hub/clock.ts';
import type { Day } from '../../../hub/contract/index.ts';
import { farmOf, readFarmFile } from '../../../hub/farm/index.ts';
import { addDays, type BatchSpan, type LossParts, makeLosses } from '../../../hub/losses/index.ts';
import type { Store } from '../../../hub/store/index.ts';
import { seeded } from '../../../rules/statistics/seeded.ts';

// Invented seasons whose truth is known, told to the hub's own log and learner.

export const FIRST = '2025-04-07'; // a Monday
const FARM = `
farm: { name: Test Garden (invented), zone: UTC, lat: 51.9, lon: -8.3, altitude: 25, money: EUR, wage: 16 }
places:
  - { id: one, name: One, kind: tunnel, crop: basil }
  - { id: two, name: Two, kind: tunnel, crop: basil }
  - { id: three, name: Three, kind: tunnel, crop: basil }
  - { id: patch, name: Patch, kind: patch, crop: basil }
crops: [ { id: basil, name: Basil } ]
`;

export type Season = {
  readonly weeks: number;
  /** Wet hours a day in that week at that place. */
  readonly wet: (week: number, place: string) => number;
  /** Share lost in that week at that place, 0..1; null: nobody opened the log there. */
  readonly lost: (week: number, place: string) => number | null;
  /** Hours a day nobody knows. */
  readonly unknown?: (week: number, place: string) => number;
  readonly batches?: () => readonly BatchSpan[];
};

export const PLACES = ['one', 'two', 'three', 'patch'] as const;
export const weekAt = (week: number) => addDays(FIRST, 7 * week);

/** The season as the hub's log has it, and what is learned of it a day after its end. */
export function learnSeason(store: Store, season: Season, places: readonly string[] = PLACES) {
  const read = readFarmFile(FARM);
  if (!read.farm) throw new Error(read.faults.join('\n'));
  const farm = farmOf(read.farm);
  const calendar = calendarOf('UTC');
  const dayAt = (place: string, day: string): Day => {
    const week = Math.floor((Date.parse(day) - Date.parse(FIRST)) / (7 * 86_400_000));
    const wet = season.wet(week, place);
    return {
      ...{ day, min: 10, max: 22, mean: 15, degreeDays: 5 },
      ...{ wetHours: wet, unknownHours: season.unknown?.(week, place) ?? 0 },
      ...{ longestSpellHours: wet, botrytisIndex: Math.min(1, wet / 24) },
    };
  };
  const parts: LossParts = {
    store,
    farm: () => farm,
    calendar: () => calendar,
    days: (place, from, to) => {
      const days: Day[] = [];
      for (let day = from; day <= to; day = addDays(day, 1)) days.push(dayAt(place, day));
      return days;
    },
    spots: { ordered: () => [], overlapping: () => [] },
    lots: {
      all: () => [],
      seen: () => {
        throw new Error('Expected no lots, got one');
      },
    },
    ...(season.batches ? { batches: season.batches } : {}),
  };
  const losses = makeLosses(parts);
  for (let week = 0; week < season.weeks; week++)
    for (const place of places) {
      const share = season.lost(week, place);
      if (share === null) continue;
      if (share === 0) {
        losses.quiet.say(place, { week: weekAt(week), holds: true }, 'Ada', 0);
        continue;
      }
      const facts = {
        ...{ place, crop: 'basil', amount: 100 * share, unit: 'share' as const, of: null },
        ...{ look: 'other' as const, day: addDays(weekAt(week), 2), batch: null, note: null },
      };
      const event = { event: 'entered' as const, facts, photo: null, another: false };
      losses.add(losses.nextId('basil', facts.day), place, event, 'Ada', 0);
    }
  const end = weekAt(season.weeks);
  return {
    losses,
    learned: losses.learn({ from: FIRST, to: addDays(end, -1) }, Date.parse(`${end}T12:00:00Z`)),
  };
}

/** Weather that goes on from week to week, nearly the same in all places; hours wet a day. */
export function wetWeeks(seed: number, weeks: number) {
  const random = seeded(seed);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const shared: number[] = [];
  for (let i = -1, before = 0; i < weeks; i++) {
    before = 0.6 * before + 0.8 * normal();
    shared.push(before);
  }
  const own = new Map<string, number>();
  return {
    random,
    wet(week: number, place: string): number {
      const key = `${week} ${place}`;
      if (!own.has(key)) own.set(key, 0.3 * normal());
      const value = (shared[week + 1] ?? 0) + (own.get(key) ?? 0);
      return Math.max(0, Math.min(20, 7 + 4 * value));
    },
  };
}
