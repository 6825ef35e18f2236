import { type Instant, instant } from '../rules/units.ts';

// The only reader of the system clock, and the only place that knows the farm's calendar.

export type Clock = {
  now(): Instant;
  /** How many times faster than a wall clock; 1 but in a demonstration. */
  readonly speed: number;
  /** ms that no setting of the clock moves, counted since some moment; at the clock's own speed. */
  steady(): number;
  /** False while the machine's clock was never set: then nothing may be decided by it. */
  isSet(): boolean;
};

/** Before this the hub's clock was never set: there was no hub to run. */
const FIRST_POSSIBLE = Date.UTC(2024, 0, 1);

/** Since the machine started (CLOCK_MONOTONIC), so that it goes on when only the hub starts again. */
const sinceBoot = () => Number(process.hrtime.bigint() / 1000n) / 1000;

export const wallClock: Clock = {
  now: () => instant(Date.now()),
  steady: sinceBoot,
  speed: 1,
  isSet: () => Date.now() >= FIRST_POSSIBLE,
};

/** A clock for demonstrations: it stood at `start` when the wall clock stood at `real` (ms). */
export const fastClock = (start: number, real: number, speed: number): Clock => ({
  now: () => instant(Math.round(start + (Date.now() - real) * speed)),
  steady: () => sinceBoot() * speed,
  speed,
  isSet: () => start + (Date.now() - real) * speed >= FIRST_POSSIBLE,
});

/** A clock that stands still until it is set; for replays. */
export function steppedClock(start: number): Clock & { set(t: number): void } {
  let now = start;
  return {
    now: () => instant(now),
    steady: () => now,
    set: (t) => {
      now = t;
    },
    speed: 1,
    isSet: () => true,
  };
}

export type Calendar = {
  readonly zone: string;
  /** `2026-04-23`, the local day this instant falls in. */
  dayOf(t: number): string;
  /** First instant of that local day, and of the next: 23, 24 or 25 hours apart. */
  bounds(day: string): { begins: Instant; ends: Instant };
  /** The day `count` days later (or earlier). */
  add(day: string, count: number): string;
  /** Minutes to add to UTC to get local time. */
  offsetMinutes(t: number): number;
};

const DAY = 86_400_000;
const QUARTER = 900_000; // all zones change their offset on a quarter of an hour
const MOST_OFFSETS_KEPT = 20_000; // about 200 days of quarters; then the memory is emptied

const utcMidnight = (day: string) => Date.parse(`${day}T00:00:00Z`);
const utcDay = (t: number) => new Date(t).toISOString().slice(0, 10);

/** @throws RangeError when `zone` is not in the IANA time zone database of this machine. */
export function calendarOf(zone: string): Calendar {
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
  });
  const offsets = new Map<number, number>();
  const bounds = new Map<string, { begins: Instant; ends: Instant }>();

  const offset = (t: number) => {
    const quarter = Math.floor(t / QUARTER);
    const known = offsets.get(quarter);
    if (known !== undefined) return known;
    const at = quarter * QUARTER;
    const part: Record<string, number> = {};
    for (const { type, value } of format.formatToParts(at)) part[type] = Number(value);
    const { year = 0, month = 1, day = 1, hour = 0, minute = 0 } = part;
    const found = Date.UTC(year, month - 1, day, hour, minute) - at;
    if (offsets.size >= MOST_OFFSETS_KEPT) offsets.clear();
    offsets.set(quarter, found);
    return found;
  };

  const dayOf = (t: number) => utcDay(t + offset(t));
  const add = (day: string, count: number) => utcDay(utcMidnight(day) + count * DAY);

  const firstOf = (day: string) => {
    const midnight = utcMidnight(day);
    const guess = midnight - offset(midnight - offset(midnight));
    if (dayOf(guess) === day && dayOf(guess - 1) !== day) return guess;
    // A clock change at midnight: the day begins where its name first appears.
    let t = midnight - 16 * 4 * QUARTER;
    while (dayOf(t) < day) t += QUARTER;
    return t;
  };

  return {
    zone,
    dayOf,
    add,
    offsetMinutes: (t) => offset(t) / 60_000,
    bounds(day) {
      let found = bounds.get(day);
      if (!found) {
        found = { begins: instant(firstOf(day)), ends: instant(firstOf(add(day, 1))) };
        if (bounds.size >= MOST_OFFSETS_KEPT) bounds.clear();
        bounds.set(day, found);
      }
      return found;
    },
  };
}
