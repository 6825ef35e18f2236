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
  const known = readings.filter(({ temperature }) => temperature !== null);
  const inDay = known.filter(({ t }) => t >= day.from && t < day.to);
  if (inDay.some(({ temperature }) => temperature !== null && temperature < limit)) return 'no';
  const nights = [
    [day.from, day.from + NIGHT_ENDS],
    [day.from + NIGHT_BEGINS, day.to],
  ] as const;
  const times = [...known.map(({ t }) => t as number)];
  // Where readings begin or end inside the day, the rest of it is the gap.
  if (!(times[0] !== undefined && times[0] <= day.from)) times.unshift(day.from);
  if ((times.at(-1) ?? day.from) < day.to) times.push(day.to);
  const hidden = times.some((from, index) => {
    const to = times[index + 1] ?? from;
    return to - from > LONGEST_GAP && nights.some(([begins, ends]) => from < ends && to > begins);
  });
  return hidden ? 'unknown' : 'yes';
}
