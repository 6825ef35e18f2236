import { HOUR, type Instant } from '../units.ts';
import { lowest, type Read, within } from './column.ts';
import type { Low } from './lowBeforehand.ts';
import type { Night } from './night.ts';
import type { Column } from './snapshot.ts';

// How the night itself corrects what was expected of it.

const LEAST_SPREAD = 0.3; // K, ours: a probe's own error and the hour after sunrise
const BEFORE_REFIT = 3; // hours after sunset, ours: sooner, a tenth of a degree swings the slope

/**
 * The low with the readings since sunset taken in: the remaining cooling added to the newest
 * reading, and the slope of the cooling curve fitted again, half each (FAO 2005 has the curve; the
 * two updates and how the spread shrinks are ours), weighed by the share of the fall that is over.
 * Never above the lowest reading so far.
 *
 * @param start temperature two hours after sunset; null when nothing was read then, and then the
 * spread stays as it was
 */
export function lowSoFar(
  expected: Low,
  start: number | null,
  column: Column,
  night: Night,
  now: Instant,
  newest: Read,
): Low {
  const seen = lowest(column, night.set, now);
  const capped = (low: Low) =>
    seen === null ? low : { ...low, mean: Math.min(low.mean, seen.value) };
  const span = night.hours - 2;
  const t = Math.min((newest.t - night.set) / HOUR, night.hours);
  if (start === null || t <= 2 || span <= 1) return capped(expected);

  const share = Math.sqrt((t - 2) / span);
  const fall = Math.max(0, start - expected.mean);
  const kept = newest.value - fall * (1 - share);
  const slope = t < BEFORE_REFIT ? null : fittedFall(column, start, night, newest.t);
  const again = slope === null ? kept : start - slope * Math.sqrt(span);
  const mean = (1 - share) * expected.mean + (share * (kept + again)) / 2;
  const sd = Math.max(LEAST_SPREAD, expected.sd * Math.sqrt((night.hours - t) / span));
  return capped({ mean, sd, df: expected.df });
}

/** k of T0 - k √(t - 2), by least squares through the start. */
function fittedFall(column: Column, start: number, { set, rise }: Night, now: Instant) {
  const { from, to } = within(column, set + 2 * HOUR, Math.min(now, rise));
  let above = 0;
  let below = 0;
  for (let i = from; i < to; i++) {
    const hours = ((column.t[i] ?? set) - set) / HOUR - 2;
    if (hours <= 0) continue;
    above += (start - (column.value[i] ?? start)) * Math.sqrt(hours);
    below += hours;
  }
  return below > 0 ? above / below : null;
}
