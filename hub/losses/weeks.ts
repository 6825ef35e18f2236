import type { Calendar } from '../clock.ts';

const DAY = 86_400_000; // ms of a UTC calendar
const MONDAY_OF_1970 = 4; // days from 1 January 1970, a Thursday, to the first Monday

const index = (day: string) => Math.round(Date.parse(`${day}T00:00:00Z`) / DAY);
const dayAt = (at: number) => new Date(at * DAY).toISOString().slice(0, 10);

/** The Monday of the week a calendar day lies in (ISO 8601 weeks). */
export const weekOf = (day: string): string => {
  const since = index(day) - MONDAY_OF_1970;
  return dayAt(index(day) - (((since % 7) + 7) % 7));
};

export const addDays = (day: string, days: number): string => dayAt(index(day) + days);

/** Mondays from the week of `from` to that of `to`. */
export function weeksBetween(from: string, to: string): string[] {
  const weeks: string[] = [];
  for (let week = weekOf(from); week <= to; week = addDays(week, 7)) weeks.push(week);
  return weeks;
}

/** From this day of the week on it can be said of it that nothing was lost: Friday. Ours. */
const SAID_FROM = 4; // days after Monday

/** The newest week that nearly is over: this one from Friday on, else the last. */
export function weekToSay(calendar: Calendar, now: number): string {
  const today = calendar.dayOf(now);
  const week = weekOf(today);
  return today >= addDays(week, SAID_FROM) ? week : addDays(week, -7);
}
