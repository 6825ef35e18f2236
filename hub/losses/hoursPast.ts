import { damageAt, type Farm } from '../farm/index.ts';
import type { LossParts } from './lossParts.ts';

const HOUR = 3_600_000; // ms

export type Limits = { readonly hotAbove: number | null; readonly coldBelow: number | null };

/** What heat and cold are measured against at a place, °C; null where nobody told. */
export function limitsAt(farm: Farm, id: string): Limits {
  const place = farm.place(id);
  if (!place) return { hotAbove: null, coldBelow: null };
  if (place.kind === 'cool-room') return { hotAbove: place.limit ?? null, coldBelow: null };
  const crop = farm.crop(place.crop);
  return {
    hotAbove: crop?.heatLimit ?? null,
    coldBelow: damageAt(farm, place)?.at ?? crop?.chill ?? null,
  };
}

/** One day's hours; `unknown` of them without a reading. */
export type DayHours = { readonly hot: number; readonly cold: number; readonly unknown: number };

/**
 * For each day from `from` to `to`: hours in which a reading was over or under the place's limits,
 * at the first of its spots that was read in that hour. Hours still to come are left out.
 */
export function hoursPast(
  { store, spots, farm, calendar }: LossParts,
  place: string,
  range: { readonly from: string; readonly to: string },
  now: number,
): Map<string, DayHours> {
  const cal = calendar();
  const begins = cal.bounds(range.from).begins;
  const ends = Math.min(cal.bounds(range.to).ends, now);
  const { hotAbove, coldBelow } = limitsAt(farm(), place);
  const hours = new Map<number, { min: number; max: number }>();
  for (const spot of spots.ordered(place, begins, ends))
    for (const { probe, from, to } of spots.overlapping(place, spot, begins, ends)) {
      const id = store.readings.idOf(probe, 'temperature');
      if (id === undefined) continue;
      const first = Math.floor(Math.max(from, begins) / HOUR) * HOUR;
      for (const { t, min, max } of store.rollups.hours(id, first, Math.min(to ?? ends, ends)))
        if (!hours.has(t)) hours.set(t, { min, max });
    }
  const days = new Map<string, DayHours>();
  for (let day = range.from; day <= range.to; day = cal.add(day, 1)) {
    const bounds = cal.bounds(day);
    let [hot, cold, unknown] = [0, 0, 0];
    const last = Math.min(bounds.ends, now);
    for (let t = Math.floor(bounds.begins / HOUR) * HOUR; t + HOUR <= last; t += HOUR) {
      const read = hours.get(t);
      if (!read) unknown += 1;
      else {
        if (hotAbove !== null && read.max > hotAbove) hot += 1;
        if (coldBelow !== null && read.min < coldBelow) cold += 1;
      }
    }
    days.set(day, { hot, cold, unknown });
  }
  return days;
}
