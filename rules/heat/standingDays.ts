import { orUnknown } from '../orUnknown.ts';
import { dayLength } from './dayLength.ts';

const SHORTEST = 10; // h; common practice, no source: with less light salad stands still
const YEAR = 365; // d

/** Whether salad only stands: kept, not grown, for want of light, whatever the heat units say. */
export const isStanding = orUnknown(
  (latitude: number, dayOfYear: number): boolean => dayLength(latitude, dayOfYear) < SHORTEST,
);

/**
 * The part of the year in which salad stands: its first and last day (1..365; the first is the
 * larger in the north, where it spans the new year) and how many there are. null where no day, or
 * every day, is that short.
 * @throws RangeError outside ±90°
 */
export const standingDays = orUnknown(function standingDays(
  latitude: number,
): { readonly from: number; readonly to: number; readonly days: number } | null {
  const short = Array.from({ length: YEAR }, (_, index) => isStanding(latitude, index + 1));
  const days = short.filter(Boolean).length;
  if (days === 0 || days === YEAR) return null;
  const from = short.findIndex((each, index) => each && !short.at(index - 1)) + 1;
  return { from, to: ((from + days - 2) % YEAR) + 1, days };
});
