import { HOUR } from '../../rules/units.ts';
import type { Calendar } from '../clock.ts';
import type { Rollup } from '../store/index.ts';
import type { HeatRule } from './heatRule.ts';
import { hourHeat } from './hourHeat.ts';
import { OF_PLANTS, type PieceParts } from './pieceHeat.ts';

/** A day with fewer hours known is not told. As for whole days of single readings. */
const LEAST = 18; // h

/** All hours of a place that are kept, of the first spot that knows each; oldest first. */
export function hoursOfPlace(
  { store, spots }: PieceParts,
  place: string,
  from: number,
  to: number,
): Rollup[] {
  const hours = new Map<number, Rollup>();
  for (const spot of OF_PLANTS)
    for (const stay of spots.overlapping(place, spot, from, to)) {
      const id = store.readings.idOf(stay.probe, 'temperature');
      if (id === undefined) continue;
      const begins = Math.max(Math.floor(from / HOUR) * HOUR, stay.from);
      for (const hour of store.rollups.hours(id, begins, Math.min(to, stay.to ?? to)))
        if (!hours.has(hour.t)) hours.set(hour.t, hour);
    }
  return [...hours.values()].sort((a, b) => a.t - b.t);
}

/** Heat units of whole days from their hours: near enough for what dates usually bring. */
export function hourlyDays(
  hours: readonly Rollup[],
  rule: HeatRule,
  calendar: Calendar,
): { readonly day: string; readonly units: number | null }[] {
  const days: { day: string; units: number | null }[] = [];
  let [day, ends, sum, known] = ['', 0, 0, 0];
  const close = () => {
    if (day !== '') days.push({ day, units: known < LEAST ? null : (sum * 24) / known });
  };
  for (const hour of hours) {
    if (hour.t >= ends) {
      close();
      day = calendar.dayOf(hour.t);
      ends = calendar.bounds(day).ends;
      [sum, known] = [0, 0];
    }
    sum += hourHeat(hour, rule);
    known += 1;
  }
  close();
  return days;
}
