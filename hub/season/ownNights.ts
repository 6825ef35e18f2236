import type { NightLowOf } from '../../rules/frost/index.ts';
import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import { nightBounds, type Spots } from '../snapshot/index.ts';
import type { Store } from '../store/index.ts';

const HOUR = 3_600_000; // ms
/** A longer gap may hide the lowest temperature. Common practice, no source. */
const LONGEST_GAP = 2 * HOUR;

/** Spots that feel the night as an uncovered crop does, the likeliest first. */
const IN_THE_OPEN = ['canopy', 'air', 'grass'] as const;

/** The spot in the open whose record of a place speaks for its frosts; null when none ever hung there. */
export function openSpot(spots: Spots, place: string): (typeof IN_THE_OPEN)[number] | null {
  const here = spots.ordered(place, 0, Number.MAX_SAFE_INTEGER);
  return IN_THE_OPEN.find((spot) => here.includes(spot)) ?? null;
}

/**
 * The low of every past night at a spot, from the lowest of each hour, so that years are read at
 * once. The hours in which the sun sets, and in which the night ends, count whole.
 */
export function ownNights(
  parts: { store: Store; spots: Spots; farm: Farm; calendar: Calendar },
  place: string,
  spot: string,
  now: number,
): NightLowOf[] {
  const { store, spots, farm, calendar } = parts;
  const hours = new Map<number, number>();
  for (const here of spots.overlapping(place, spot, 0, now)) {
    const id = store.readings.idOf(here.probe, 'temperature');
    if (id === undefined) continue;
    const to = Math.min(now, here.to ?? now);
    for (const { t, min } of store.rollups.hours(id, here.from, to))
      hours.set(t, Math.min(min, hours.get(t) ?? Number.POSITIVE_INFINITY));
  }
  if (hours.size === 0) return [];
  let first = now;
  for (const t of hours.keys()) first = Math.min(first, t);
  const nights: NightLowOf[] = [];
  for (let night = calendar.dayOf(first); ; night = calendar.add(night, 1)) {
    const bounds = nightBounds(farm, calendar, night);
    if (bounds === null) {
      if (calendar.bounds(night).begins > now) break;
      continue;
    }
    if (bounds.to > now) break;
    nights.push({ night, low: lowest(hours, bounds.sunset, bounds.to) });
  }
  return nights;
}

function lowest(hours: ReadonlyMap<number, number>, from: number, to: number): number | null {
  let low: number | null = null;
  let missing = 0;
  for (let t = Math.floor(from / HOUR) * HOUR; t <= to; t += HOUR) {
    const here = hours.get(t);
    if (here === undefined) {
      missing += HOUR;
      if (missing > LONGEST_GAP) return null;
      continue;
    }
    missing = 0;
    low = low === null ? here : Math.min(low, here);
  }
  return low;
}
