import type { PlaceDay } from '../../rules/days/index.ts';
import { enoughKnown } from '../../rules/days/index.ts';
import type { Calendar } from '../clock.ts';
import type { Snapshots } from '../snapshot/index.ts';

/** Years looked back on, and days either side of the dates. Ours. */
const YEARS = 3;
const AROUND = 3;
const YEAR = 365.25; // days

/** The same dates of past years in one place, as far as they were measured there. */
export function sameWeeks(
  { climate, days }: Pick<Snapshots, 'climate' | 'days'>,
  calendar: Calendar,
  place: string,
  crop: string,
  { from, to }: { readonly from: string; readonly to: string },
  now: number,
): { readonly year: string; readonly days: readonly PlaceDay[] }[] {
  const first = days.firstDay(place);
  if (first === null) return [];
  return Array.from({ length: YEARS }, (_, i) => {
    const back = -Math.round(YEAR * (YEARS - i));
    const begin = calendar.add(from, back - AROUND);
    const end = calendar.add(to, back + AROUND);
    if (end < first) return { year: begin.slice(0, 4), days: [] };
    return { year: begin.slice(0, 4), days: climate.of(place, crop, begin, end, now) };
  }).filter((year) => year.days.some(enoughKnown));
}
