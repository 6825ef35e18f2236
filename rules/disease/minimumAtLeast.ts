import { HOUR } from '../units.ts';
import type { AirRead, Window } from '../wetness/index.ts';
import type { Verdict } from './judgement.ts';

// All ours: a night's low hides in a gap, an afternoon's seldom does.
const NIGHT_ENDS = 8 * HOUR; // after the day's midnight
const NIGHT_BEGINS = 22 * HOUR;
const LONGEST_GAP = 2 * HOUR;

/**
 * Whether a calendar day stayed at or above a temperature. One known reading below it is a no; a
 * yes needs a night (until 08:00 and from 22:00) without a gap of more than 2 h.
 * @param readings in order of time; those of the days beside help at midnight
 * @param day from midnight to midnight, local standard time
 */
export function minimumAtLeast(readings: readonly AirRead[], limit: number, day: Window): Verdict {
  const nightEnds = day.from + NIGHT_ENDS;
  const nightBegins = day.from + NIGHT_BEGINS;
  let hidden = false;
  let last: number | null = null;
  const pass = (from: number, to: number) => {
    if (!(to - from > LONGEST_GAP)) return;
    if (from < nightEnds && to > day.from) hidden = true;
    if (from < day.to && to > nightBegins) hidden = true;
  };
  for (const { t, temperature } of readings) {
    if (temperature === null) continue;
    if (temperature < limit && t >= day.from && t < day.to) return 'no';
    // Where readings begin or end inside the day, the rest of it is the gap.
    if (last !== null) pass(last, t);
    else if (t > day.from) pass(day.from, t);
    last = t;
  }
  if (last === null || last < day.to) pass(last ?? day.from, day.to);
  return hidden ? 'unknown' : 'yes';
}
