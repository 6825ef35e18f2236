import { addDays, calendarDay, instantAt } from '../times.ts';

export type Hour = { readonly t: number; readonly hour: number };

/** Every `every` hours by the clock on the farm's wall, inside `from`..`to`. */
export function hours(from: number, to: number, every: number, zone: string): Hour[] {
  const found: Hour[] = [];
  const last = calendarDay(to, zone);
  for (let day = calendarDay(from, zone); day <= last; day = addDays(day, 1)) {
    for (let hour = 0; hour < 24; hour += every) {
      const t = instantAt(day, hour * 60, zone);
      if (t >= from && t <= to) found.push({ t, hour });
    }
  }
  return found;
}
