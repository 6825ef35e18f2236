import { type CoolingNight, coolingCurve, crossingTime } from '../frost/index.ts';
import { studentQuantile } from '../statistics/index.ts';
import { celsius, HOUR, type Instant, instant, MINUTE } from '../units.ts';
import type { Read } from './column.ts';
import type { Low } from './lowBeforehand.ts';
import { AFTER_RISE, type Night } from './night.ts';
import type { NightForecast } from './snapshot.ts';

// The way down through the night: straight to two hours after sunset, then the square-root curve
// of Snyder & de Melo-Abreu 2005 (FAO, vol. 1) to the low at sunrise, then level.

type Line = {
  readonly at: (t: number) => number;
  /** First moment below `limit`; null when the line stays above. */
  readonly crossing: (limit: number) => Instant | null;
};

const STEP = 30 * MINUTE;
const STARTS = 2; // h after sunset
const HOTTEST = 60; // °C, ours
const NEARLY_OVER = 0.98; // share of the fall; beyond it the curve has no start to go back to

/**
 * The way down through one night: straight from `from`, curved from `bend` on. `from` may be the
 * bend itself. The curve loses heat with the square root of the hours after sunset.
 *
 * Source: the square-root curve of Snyder & de Melo-Abreu 2005, Frost Protection, FAO, vol. 1;
 * the straight way before it is ours.
 */
export function nightLine(from: Read, bend: Read, low: number, night: Night): Line {
  const hoursAt = (t: number) => (t - night.set) / HOUR;
  const slope = bend.t > from.t ? (bend.value - from.value) / (bend.t - from.t) : 0;
  const curve = curveThrough(bend, low, night);
  const last = Math.max(night.rise, bend.t + 1);
  const straight = (low - bend.value) / (last - bend.t);

  const at = (t: number) => {
    if (t < bend.t) return from.value + slope * (Math.max(t, from.t) - from.t);
    if (t >= last) return low;
    const curved = curve && coolingCurve(curve, Math.max(STARTS, hoursAt(t)));
    return curved ?? bend.value + straight * (t - bend.t);
  };
  const crossing = (limit: number) => {
    if (from.value < limit) return from.t;
    if (bend.value < limit) return instant(from.t + (limit - from.value) / slope);
    if (low >= limit) return null;
    const hours = curve && crossingTime(curve, limit);
    if (hours !== null) return instant(night.set + hours * HOUR);
    return instant(bend.t + (limit - bend.value) / straight);
  };
  return { at, crossing };
}

/** The curve that passes `bend` and ends at `low`; its start may lie above any reading. */
function curveThrough({ t, value }: Read, low: number, { set, hours }: Night): CoolingNight | null {
  const share = Math.sqrt(Math.max(0, ((t - set) / HOUR - STARTS) / (hours - STARTS)));
  if (hours <= STARTS || !(share < NEARLY_OVER) || value <= low) return null;
  const start = (value - low * share) / (1 - share);
  const night = { start, low, nightHours: hours };
  if (start > HOTTEST) return null; // so late that a straight line says the same
  return coolingCurve(night, STARTS) === null ? null : night;
}

/**
 * 10 %, 50 % and 90 % of the chances each half hour, from now or sunset to an hour after sunrise.
 * The spread grows from nothing now to that of the low at sunrise.
 */
export function fanOf(line: Line, low: Low, night: Night, now: Instant): NightForecast['fan'] {
  const begin = Math.max(now, night.set);
  const end = night.rise + AFTER_RISE;
  const tenth = studentQuantile(0.9, low.df) * low.sd;
  const fan: NightForecast['fan'][number][] = [];
  const point = (t: number) => {
    const grown = Math.min(1, Math.max(0, (t - now) / Math.max(STEP, night.rise - now)));
    const middle = line.at(t);
    const half = tenth * Math.sqrt(grown);
    fan.push({
      t: instant(t),
      low: celsius(middle - half),
      middle: celsius(middle),
      high: celsius(middle + half),
    });
  };
  for (let t = begin; t < end; t += STEP) point(t);
  point(end);
  return fan;
}
