import { words } from './words.ts';

// Times of day and calendar days in the farm's zone, wherever the browser is.

const MINUTE = 60_000; // ms
const DAY = 86_400_000; // ms, of a UTC calendar

const formats = new Map<string, Intl.DateTimeFormat>();

function format(zone: string, name: string, options: Intl.DateTimeFormatOptions) {
  const key = `${name} ${zone}`;
  let made = formats.get(key);
  if (!made) {
    made = new Intl.DateTimeFormat('en-GB', { timeZone: zone, hourCycle: 'h23', ...options });
    formats.set(key, made);
  }
  return made;
}

/** `19:40`, `7:40 pm` */
export const timeOfDay = (ms: number, zone: string) => words.clock(ms, zone);

/** `Mon 3 Nov` */
export const dayName = (ms: number, zone: string) => words.dayName(ms, zone);

/** `Monday 3 November` */
export const longDay = (ms: number, zone: string) => words.longDay(ms, zone);

/** `Mon` */
export const weekday = (ms: number, zone: string) => words.weekday(ms, zone);

/** An hour on an axis: `06`, `6 am`. */
export const hourOfDay = (ms: number, zone: string) => words.hour(ms, zone);

/** A calendar day `2025-11-03` as `3 Nov`. */
export const shortDay = (day: string) => words.shortDay(day);

/** A calendar day's month: `Nov`, and in January the year instead. */
export const shortMonth = (day: string) =>
  day.slice(5, 7) === '01' ? day.slice(0, 4) : words.month(day);

const parts = (ms: number, zone: string) => {
  const found: Record<string, number> = {};
  const made = format(zone, 'parts', {
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
  });
  for (const { type, value } of made.formatToParts(ms)) found[type] = Number(value);
  const { year = 0, month = 1, day = 1, hour = 0, minute = 0, second = 0 } = found;
  return { year, month, day, hour, minute, second };
};

/** The calendar day an instant falls in: `2025-11-03`. */
export function calendarDay(ms: number, zone: string): string {
  const { year, month, day } = parts(ms, zone);
  return new Date(Date.UTC(year, month - 1, day)).toISOString().slice(0, 10);
}

/** Minutes since local midnight by the clock on the wall, 0 to 1439. */
export function minuteOfDay(ms: number, zone: string): number {
  const { hour, minute } = parts(ms, zone);
  return hour * 60 + minute;
}

export const addDays = (day: string, days: number) =>
  new Date(Date.parse(`${day}T00:00:00Z`) + days * DAY).toISOString().slice(0, 10);

function offset(ms: number, zone: string): number {
  const { year, month, day, hour, minute, second } = parts(ms, zone);
  return Date.UTC(year, month - 1, day, hour, minute, second) - Math.floor(ms / 1000) * 1000;
}

/**
 * The instant at which clocks in the zone show that minute of that day. A time that a change of
 * clocks skips becomes the one as much later as was skipped.
 */
export function instantAt(day: string, minute: number, zone: string): number {
  const asIfUtc = Date.parse(`${day}T00:00:00Z`) + minute * MINUTE;
  const first = asIfUtc - offset(asIfUtc, zone);
  const second = asIfUtc - offset(first, zone);
  const shows = [second, first].find((ms) => ms + offset(ms, zone) === asIfUtc);
  return shows ?? Math.max(first, second);
}

/** `19:40` today, else with its day: `Tue 4 Nov 06:30`. */
export function when(ms: number, zone: string, now: number): string {
  const time = timeOfDay(ms, zone);
  return calendarDay(ms, zone) === calendarDay(now, zone) ? time : `${dayName(ms, zone)} ${time}`;
}
