import { shown } from '../words/index.ts';
import { Refusal } from './message.ts';

/** Numbers below this are seconds since 1970 (until the year 5138), above it milliseconds. */
const SECONDS_BELOW = 1e11;
const ISO = /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d+)?)?(Z|[+-]\d\d:?\d\d)$/;

/** ISO 8601 text with zone, or seconds or milliseconds since 1970. @throws Refusal */
export function readTime(value: unknown, field: string): number {
  if (typeof value === 'number' && Number.isFinite(value) && value >= 0)
    return Math.round(value < SECONDS_BELOW ? value * 1000 : value);
  if (typeof value === 'string' && ISO.test(value)) {
    const t = Date.parse(value);
    // Date.parse takes 30 February for 2 March.
    const day = value.slice(0, 10);
    if (Number.isFinite(t) && new Date(`${day}T00:00:00Z`).toISOString().startsWith(day)) return t;
  }
  throw new Refusal(
    'bad-time',
    `Expected ISO 8601 with zone, or seconds or milliseconds since 1970, in ${field}, got ${shown(value)}`,
  );
}
