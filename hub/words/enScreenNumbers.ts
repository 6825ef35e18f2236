// Numbers, units and lengths of time as English screens say them. U+2212 for minus and a hard space
// before a unit, so that a figure never breaks across two lines.

const HARD = '\u00a0';
const MINUTE = 60_000; // ms
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

export const notKnown = 'not known';

/** `-1.25` -> `−1.3`; null is said in words, never as a zero. */
export function number(value: number | null, digits = 1): string {
  if (value === null || !Number.isFinite(value)) return notKnown;
  const text = Math.abs(value).toFixed(digits);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

export const withUnit = (value: number | null, unit: string, digits = 1): string =>
  value === null || unit === '' ? number(value, digits) : `${number(value, digits)}${HARD}${unit}`;

/** With its sign, as a correction is said: `+0.2`, `−2`. */
export const signed = (value: number) =>
  `${value > 0 ? '+' : ''}${number(value, Number.isInteger(value) ? 0 : 1)}`;

export const temperature = (value: number | null) => withUnit(value, '°C');
export const humidity = (value: number | null) => withUnit(value, '%', 0);

/** A probability from 0 to 1. Never "0 %" or "100 %": a forecast is not a promise. */
export function chance(p: number): string {
  if (p < 0.01) return `under 1${HARD}%`;
  if (p > 0.99) return `over 99${HARD}%`;
  return withUnit(p * 100, '%', 0);
}

const formats = new Map<string, Intl.NumberFormat>();
/** Whole money in the farm's currency (ISO 4217). */
export function money(value: number, currency: string): string {
  let format = formats.get(currency);
  if (!format) {
    format = new Intl.NumberFormat('en-GB', {
      style: 'currency',
      currency,
      maximumFractionDigits: 0,
    });
    formats.set(currency, format);
  }
  return format.format(value);
}

const count = (n: number, one: string) => `${n} ${one}${n === 1 ? '' : 's'}`;
export const counted = count;

/** A length of time in ms: `25 min`, `2 h 10`, `3 h`, `2 days 4 h`. */
export function span(ms: number): string {
  const minutes = Math.round(Math.abs(ms) / MINUTE);
  if (minutes < 60) return `${minutes}${HARD}min`;
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (hours < 48) {
    return rest === 0
      ? `${hours}${HARD}h`
      : `${hours}${HARD}h${HARD}${String(rest).padStart(2, '0')}`;
  }
  const spare = hours % 24;
  const days = count(Math.floor(hours / 24), 'day');
  return spare === 0 ? days : `${days} ${spare}${HARD}h`;
}

/** How long ago, rounded down: an age is never made to look older or finer than it is. */
export function age(ms: number): string {
  const past = Math.max(0, ms);
  if (past < MINUTE) return 'just now';
  return `${ageLength(past)} ago`;
}

/** The same without "ago": `4 minutes`, `2 hours`, `3 days`. */
export function ageLength(ms: number): string {
  const past = Math.max(0, ms);
  if (past < MINUTE) return 'less than a minute';
  if (past < HOUR) return count(Math.floor(past / MINUTE), 'minute');
  if (past < 2 * DAY) return count(Math.floor(past / HOUR), 'hour');
  return count(Math.floor(past / DAY), 'day');
}

/** From now to a deadline, in ms: `in 2 h 10`, `now`, `25 min late`. */
export function countdown(ms: number): string {
  if (Math.abs(ms) < MINUTE) return 'now';
  return ms > 0 ? `in ${span(ms)}` : `${span(ms)} late`;
}
