import { HOUR, type Instant } from '../units.ts';
import { lowest, type Read, within } from './column.ts';
import type { LearnedUpdate } from './learnUpdate.ts';
import type { Low } from './lowBeforehand.ts';
import type { Night } from './night.ts';
import { type HourRead, nightWays } from './nightWays.ts';
import type { Column } from './snapshot.ts';

// How the night itself corrects what was expected of it.

const LEAST_SPREAD = 0.3; // K, ours: a probe's own error and the hour after sunrise

/**
 * The low with the readings since sunset taken in: the remaining cooling added to the newest
 * reading, and the slope of the cooling curve fitted again, half each (FAO 2005 has the curve; the
 * two updates and how the spread shrinks are ours), weighed by the share of the fall that is over.
 * Once fifteen own nights tell which of these ways has been nearest at this hour, that one is
 * taken, with the spread it has had. Never above the lowest reading so far.
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
  learned: LearnedUpdate | null = null,
): Low {
  const seen = lowest(column, night.set, now);
  const capped = (low: Low) =>
    seen === null ? low : { ...low, mean: Math.min(low.mean, seen.value) };
  const span = night.hours - 2;
  const t = Math.min((newest.t - night.set) / HOUR, night.hours);
  if (start === null || t <= 2 || span <= 1) return capped(expected);

  const ways = nightWays({
    start,
    expected: expected.mean,
    nightHours: night.hours,
    reads: readsOf(column, night, newest.t),
    last: { after: t, value: newest.value },
  });
  const shrunk = expected.sd * Math.sqrt((night.hours - t) / span);
  // Just past two hours the learned spread of the next whole hour would be too sure.
  const sd = Math.max(LEAST_SPREAD, learned === null ? shrunk : learned.spread);
  return capped({
    mean: ways[learned?.way ?? 'weighed'],
    sd,
    df: learned?.df ?? expected.df,
  });
}

function readsOf(column: Column, { set, rise }: Night, until: number): readonly HourRead[] {
  const { from, to } = within(column, set + 2 * HOUR, Math.min(until, rise));
  const reads: HourRead[] = [];
  for (let i = from; i < to; i++) {
    const after = ((column.t[i] ?? set) - set) / HOUR;
    if (after > 2) reads.push({ after, value: column.value[i] ?? Number.NaN });
  }
  return reads;
}
