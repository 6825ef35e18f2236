import { sunTimes } from '../heat/index.ts';
import { HOUR, type Instant, instant } from '../units.ts';
import { by, type How, put, when } from './how.ts';
import type { Snapshot } from './snapshot.ts';

const DAY = 24 * HOUR;
/** The low is looked for until an hour after sunrise: shade keeps a hollow cooling that long. Ours. */
export const AFTER_RISE = HOUR;

export type Night = {
  /** Calendar day of the sunrise that ends it. */
  readonly name: string;
  readonly set: Instant;
  readonly rise: Instant;
  /** Sunrise of the day before it. */
  readonly riseBefore: Instant;
  /** From sunset to sunrise, in hours. */
  readonly hours: number;
  /** 15:00 of the day before it, by the farm's clock. */
  readonly afternoon: Instant;
};
export type Sun = {
  /** Of today's calendar day. */
  readonly rise: Instant;
  readonly set: Instant;
  /** The night that runs, until an hour after its sunrise; then the one to come. */
  readonly night: Night;
};

const inMonth = (year: number, month: number) => {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
};

/** The calendar day after `2025-12-31` is `2026-01-01`. */
export function dayAfter(name: string): string {
  const [year = 0, month = 1, day = 1] = name.split('-').map(Number);
  const two = (n: number) => String(n).padStart(2, '0');
  if (day < inMonth(year, month)) return `${year}-${two(month)}-${two(day + 1)}`;
  return month < 12 ? `${year}-${two(month + 1)}-01` : `${year + 1}-01-01`;
}

/** How far from sunrise or sunset it is. */
export const bySun = ({ farm, now }: Snapshot, what: 'sunrise' | 'sunset', at: Instant): How =>
  by(
    'sunTimes',
    put('latitude', farm.lat, '°'),
    put('longitude', farm.lon, '°'),
    when(what, at),
    when('now', now),
  );

/** Sun and night around `now`; null where the sun does not both rise and set. */
export function sunAround({ now, day, farm }: Snapshot): Sun | null {
  const ofDay = (noon: number) => {
    const sun = sunTimes(instant(noon), farm.lat, farm.lon);
    return sun.rise === null || sun.set === null ? null : { rise: sun.rise, set: sun.set };
  };
  // Middle of the calendar day, so that a day of 23 or 25 hours keeps its own sun.
  const noon = (day.begins + day.ends) / 2;
  const yesterday = ofDay(noon - DAY);
  const today = ofDay(noon);
  const tomorrow = ofDay(noon + DAY);
  if (today === null) return null;

  const runs = now < today.rise + AFTER_RISE;
  const [before, after] = runs ? [yesterday, today] : [today, tomorrow];
  if (before === null || after === null) return null;
  const night: Night = {
    name: runs ? day.name : dayAfter(day.name),
    set: before.set,
    rise: after.rise,
    riseBefore: before.rise,
    hours: (after.rise - before.set) / HOUR,
    afternoon: instant(day.begins + (runs ? -9 : 15) * HOUR),
  };
  return { rise: today.rise, set: today.set, night };
}
