import { HOUR, type Instant, instant } from '../../rules/units.ts';
import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';

const WEEK = ['sunday', 'monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday'];
/** A delivery day counts until noon: later what is in the room has missed it. Ours. */
const LEAVES_AT = 12 * HOUR;
const DAYS_AHEAD = 14;

/** The coming deliveries by the farm file's weekdays, the nearest first. */
export function nextSales(farm: Farm, calendar: Calendar, now: number): Instant[] {
  const days = new Set(farm.file.deliveries.map(({ day }) => WEEK.indexOf(day)));
  const sales: Instant[] = [];
  const today = calendar.dayOf(now);
  for (let ahead = 0; ahead <= DAYS_AHEAD; ahead++) {
    const day = calendar.add(today, ahead);
    if (!days.has(new Date(`${day}T00:00:00Z`).getUTCDay())) continue;
    const at = instant(calendar.bounds(day).begins + LEAVES_AT);
    if (at > now) sales.push(at);
  }
  return sales;
}
