import { dayAt, sunTimes } from '../heat/index.ts';
import { HOUR, type Instant, instant } from '../units.ts';
import { isClearCalmAtStation } from './isClearCalmAtStation.ts';
import type { StationHour } from './parseIsdLite.ts';
import type { StationDay } from './stationDays.ts';

const DAY = 24 * HOUR;
const LONGEST_GAP = 2 * HOUR; // a longer one may hide the extreme; common practice, no source
const SIX_HOURLY = 4; // reports of rain over six hours that make a day

/** A day of a station that reports by the hour; `calm` tells whether its night was clear and calm. */
export type HourlyDay = StationDay & { readonly calm: boolean | null };

/**
 * Days of a station's hours. A day's minimum is that of the night which ends on it, from sunset to
 * an hour after sunrise; its maximum that of the local day by the sun. With a gap of more than two
 * hours neither is known. Hourly values miss the true minimum by 0.2 to 0.5 K (common practice, no
 * source).
 *
 * Source: the bounds of a night are ours, the rest common practice, no source.
 * @param hours oldest first
 * @throws RangeError for a latitude or longitude that is none
 */
export function daysOfHours(
  hours: readonly StationHour[],
  lat: number,
  lon: number,
): readonly HourlyDay[] {
  const first = hours[0];
  const last = hours.at(-1);
  if (first === undefined || last === undefined) return [];
  // Days by the sun: noon is when the sun stands highest, whatever the clocks there say.
  const shift = (lon / 15) * HOUR;
  const number = (t: Instant) => Math.floor((t + shift) / DAY);
  const days: HourlyDay[] = [];
  let from = 0;
  for (let day = number(first.t); day <= number(last.t); day += 1) {
    const midnight = day * DAY - shift;
    while (from < hours.length && (hours[from]?.t ?? 0) < midnight - DAY) from += 1;
    const near: StationHour[] = [];
    for (let at = from; at < hours.length; at += 1) {
      const hour = hours[at];
      if (hour === undefined || hour.t >= midnight + DAY) break;
      near.push(hour);
    }
    const of = (a: number, b: number) => near.filter(({ t }) => t >= a && t <= b);
    const { set } = sunTimes(instant(midnight - DAY / 2), lat, lon);
    const { rise } = sunTimes(instant(midnight + DAY / 2), lat, lon);
    const dark = set !== null && rise !== null;
    const night = dark ? of(set, rise + HOUR) : [];
    const today = of(midnight, midnight + DAY - 1);
    days.push({
      day: dayAt(day),
      min: dark ? extreme(night, set, rise + HOUR, Math.min) : null,
      max: extreme(today, midnight, midnight + DAY, Math.max),
      ...rainOf(today),
      calm: dark ? isClearCalmAtStation(night, set, rise) : null,
    });
  }
  return days;
}

function extreme(
  hours: readonly StationHour[],
  from: number,
  to: number,
  better: (a: number, b: number) => number,
): number | null {
  let found: number | null = null;
  let last = from;
  for (const { t, temperature } of hours) {
    if (temperature === null) continue;
    if (t - last > LONGEST_GAP) return null;
    last = t;
    found = found === null ? temperature : better(found, temperature);
  }
  return to - last > LONGEST_GAP ? null : found;
}

function rainOf(hours: readonly StationHour[]): { rain: number | null; trace: boolean } {
  const sum = (values: readonly (number | null)[]) =>
    values.reduce<number>((all, value) => all + (value ?? 0), 0);
  const trace = hours.some(({ rainTrace, rain6Trace }) => rainTrace || rain6Trace);
  const hourly = hours.map(({ rain }) => rain).filter((rain) => rain !== null);
  if (hourly.length >= 24) return { rain: sum(hourly), trace };
  const six = hours.map(({ rain6 }) => rain6).filter((rain) => rain !== null);
  if (six.length >= SIX_HOURLY) return { rain: sum(six), trace };
  // Rain that was seen is known to have fallen; a day partly seen dry is not known to be dry.
  return sum(hourly) + sum(six) > 0 || trace
    ? { rain: Math.max(sum(hourly), sum(six)), trace }
    : { rain: null, trace: false };
}
