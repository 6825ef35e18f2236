import { expectRange } from '../expectRange.ts';

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;
const isLeap = (year: number) => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

/** Days of a month of the Gregorian calendar; month 1..12. */
export function daysInMonth(year: number, month: number): number {
  expectRange('month', month, 1, 12, '');
  return (DAYS[month - 1] ?? 0) + (month === 2 && isLeap(year) ? 1 : 0);
}

/** Day of the year, 1..366, of a day written `2025-10-15`. */
export function dayOfYear(day: string): number {
  const [, year = '', month = '', date = ''] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(day) ?? [];
  const valid = year !== '' && Number(month) >= 1 && Number(month) <= 12;
  if (!valid || Number(date) < 1 || Number(date) > daysInMonth(Number(year), Number(month))) {
    throw new RangeError(`Expected a day from 0001-01-01 to 9999-12-31, got ${day}`);
  }
  let days = Number(date);
  for (let before = 1; before < Number(month); before += 1) {
    days += daysInMonth(Number(year), before);
  }
  return days;
}

/**
 * Days since 1970-01-01 (which is 0) of a calendar day written `2025-10-15`: for telling how far
 * days are apart without any clock. Gregorian calendar throughout.
 * @throws RangeError for anything that is no such day
 */
export function dayNumber(day: string): number {
  const ofYear = dayOfYear(day);
  const before = Number(day.slice(0, 4)) - 1;
  const leaps = (years: number) =>
    Math.floor(years / 4) - Math.floor(years / 100) + Math.floor(years / 400);
  return (before - 1969) * 365 + leaps(before) - leaps(1969) + ofYear - 1;
}

/** How far two calendar days are apart within the year, whichever their years: 0..182. */
export function daysApartInYear(a: string, b: string): number {
  const away = Math.abs(dayOfCommonYear(a) - dayOfCommonYear(b));
  return Math.min(away, 365 - away);
}

/** Day of a year without a leap day, 1..365; 29 February counts as the 28th. */
export function dayOfCommonYear(day: string): number {
  const ofYear = dayOfYear(day);
  return isLeap(Number(day.slice(0, 4))) && ofYear > 59 ? ofYear - 1 : ofYear;
}

/** The day with that number: dayNumber turned round. */
export function dayAt(number: number): string {
  expectRange('day number', number, -719_162, 2_932_896, '');
  let year = 1970 + Math.floor(number / 365.2425);
  // Near the new year the mean length of a year may be a day off either way.
  while (dayNumber(written(year, 1, 1)) > number) year -= 1;
  while (year < 9999 && dayNumber(written(year + 1, 1, 1)) <= number) year += 1;
  let left = number - dayNumber(written(year, 1, 1));
  let month = 1;
  while (left >= daysInMonth(year, month)) {
    left -= daysInMonth(year, month);
    month += 1;
  }
  return written(year, month, left + 1);
}

/** A calendar day as it is written everywhere: `2025-10-15`. */
export const written = (year: number, month: number, date: number): string =>
  `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(date).padStart(2, '0')}`;
