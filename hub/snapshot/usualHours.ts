import {
  IDLE,
  type Span,
  STOPS_DAYS,
  type SupplyStop,
  type Trace,
  usualStops,
} from '../../rules/cooler/index.ts';
import { instant } from '../../rules/units.ts';
import type { Calendar } from '../clock.ts';

const MINUTE = 60_000;
const DAY_MINUTES = 1440;
/** Under a watt nothing is fed: a controller alone draws some. Ours. */
export const NO_SUPPLY = 1; // W
/** A shorter stop is a refuelling or a fault, and no habit. Ours. */
const LEAST_STOP = 120 * MINUTE;
/** Pauses in which the controller draws something, as a share: else nothing tells a stop. Ours. */
const DRAWS = 0.9;

/** What one day shows of its supply: stretches with nothing drawn, and how pauses look outside them. */
export type SupplyDay = {
  readonly off: readonly Span[];
  /** Readings of a unit that waits: with something drawn, and with nothing. */
  readonly waiting: { readonly drawn: number; readonly nothing: number };
};

/** null for a day without readings of the power. */
export function supplyDay({ t, value }: Trace, hole: number): SupplyDay | null {
  if (t.length === 0) return null;
  const off: { from: number; to: number; readings: number }[] = [];
  let drawn = 0;
  let open = false;
  t.forEach((at, i) => {
    const watts = value[i] as number;
    if (watts >= NO_SUPPLY) {
      if (watts < IDLE) drawn += 1;
      const last = off.at(-1);
      if (open && last && at - last.to <= hole) last.to = at;
      open = false;
      return;
    }
    const last = off.at(-1);
    if (open && last && at - last.to <= hole) {
      last.to = at;
      last.readings += 1;
    } else off.push({ from: at, to: at, readings: 1 });
    open = true;
  });
  const short = off.filter(({ from, to }) => to - from < LEAST_STOP);
  return {
    off: off.map(({ from, to }) => ({ from: instant(from), to: instant(to) })),
    waiting: { drawn, nothing: short.reduce((sum, { readings }) => sum + readings, 0) },
  };
}

export type UsualHours = {
  /** Local hours in which the supply is usually on, `05:10-23:50`. */
  readonly hours: readonly string[];
  /** The fewest days that speak for one of the stops between them. */
  readonly days: number;
};

/**
 * The hours in which a cool room's supply is usually on, out of its days with the newest last; null
 * while they are not clear. A stop that goes on past midnight is one stop.
 */
export function usualHours(
  days: readonly SupplyDay[],
  calendar: Calendar,
  hole: number,
): UsualHours | null {
  const recent = days.slice(-STOPS_DAYS);
  const drawn = recent.reduce((sum, { waiting }) => sum + waiting.drawn, 0);
  const nothing = recent.reduce((sum, { waiting }) => sum + waiting.nothing, 0);
  if (drawn === 0 || drawn < DRAWS * (drawn + nothing)) return null;
  const joined: { from: number; to: number }[] = [];
  for (const { from, to } of recent.flatMap(({ off }) => off)) {
    const last = joined.at(-1);
    if (last && from - last.to <= hole) last.to = to;
    else joined.push({ from, to });
  }
  const stops = joined
    .filter(({ from, to }) => to - from >= LEAST_STOP)
    .map(({ from, to }): SupplyStop => {
      const day = calendar.dayOf(from);
      const begin = wallMinute(calendar, from);
      return {
        day: Math.round(Date.parse(day) / 86_400_000),
        from: begin,
        to: begin + (to - from) / MINUTE,
      };
    });
  const usual = usualStops(stops);
  if (usual.length === 0) return null;
  const on = onBetween(usual);
  return on.length === 0 ? null : { hours: on, days: Math.min(...usual.map((one) => one.days)) };
}

/** Minutes on the clock of the wall since its 0:00. */
const wallMinute = (calendar: Calendar, t: number) => {
  const { begins } = calendar.bounds(calendar.dayOf(t));
  return (
    (t - begins) / MINUTE + calendar.offsetMinutes(instant(t)) - calendar.offsetMinutes(begins)
  );
};

/** What the stops leave of the round of the clock, in hours as the farm file tells them. */
function onBetween(stops: readonly { readonly from: number; readonly to: number }[]): string[] {
  const off = new Array<boolean>(DAY_MINUTES).fill(false);
  for (const { from, to } of stops)
    for (let minute = Math.floor(from); minute < Math.ceil(to); minute++)
      off[((minute % DAY_MINUTES) + DAY_MINUTES) % DAY_MINUTES] = true;
  const first = off.indexOf(true);
  if (first < 0) return [];
  const hours: string[] = [];
  let begin: number | null = null;
  for (let i = 0; i <= DAY_MINUTES; i++) {
    const minute = first + i;
    const on = i < DAY_MINUTES && off[minute % DAY_MINUTES] === false;
    if (on) begin ??= minute;
    else if (begin !== null) {
      hours.push(`${clockText(begin)}-${clockText(minute)}`);
      begin = null;
    }
  }
  return hours;
}

const clockText = (minute: number) => {
  const at = minute % DAY_MINUTES;
  const two = (n: number) => String(n).padStart(2, '0');
  return `${two(Math.floor(at / 60))}:${two(at % 60)}`;
};

/**
 * A plan that was learned gives way to what the meter says: while something is drawn the supply is
 * on, and has been since it came back.
 */
export function withPowerNow(plan: readonly Span[], power: Trace, now: number): readonly Span[] {
  const { t, value } = power;
  const last = t.findLastIndex((at) => at <= now);
  if (last < 0 || (value[last] as number) < NO_SUPPLY) return plan;
  if (plan.some(({ from, to }) => from <= now && now < to)) return plan;
  let first = last;
  while (first > 0 && (value[first - 1] as number) >= NO_SUPPLY) first -= 1;
  const next = plan.find(({ from }) => from > now);
  const own = { from: t[first] as Span['from'], to: instant(next?.from ?? now + 2 * MINUTE) };
  const to = instant(Math.min(own.to, now + 2 * MINUTE));
  const before = plan.filter((span) => span.to <= own.from || span.to <= now);
  const after = plan.filter(({ from }) => from > now);
  const joined = before.filter((span) => span.to > own.from);
  const from = instant(Math.min(own.from, ...joined.map((span) => span.from)));
  return [...before.filter((span) => span.to <= own.from), { from, to }, ...after];
}
