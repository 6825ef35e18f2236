import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';

const STARTS = 2; // h after sunset
const ENOUGH_NIGHTS = 15; // before a learned spread replaces the shape; common practice, no source

/**
 * What is left of a forecast's spread `after` hours past sunset: se √[(N - t)/(N - 2)], all of it
 * two hours after sunset and none at sunrise. Common practice, no source; learnedSpread replaces
 * it once there are nights to learn from.
 * @throws RangeError for a night not from above 2 to 24 h, a time outside it, or a negative spread
 */
export const remainingSpread = orUnknown(function remainingSpread(
  sd: number,
  after: number,
  nightHours: number,
): number {
  expectRange('spread', sd, 0, 100, 'K');
  expectRange('length of the night', nightHours, STARTS + 0.1, 24, 'h');
  expectRange('hours after sunset', after, STARTS, nightHours, 'h');
  return sd * Math.sqrt((nightHours - after) / (nightHours - STARTS));
});

/**
 * Spread of updated lows at one hour of the night, learned: root mean square of past (low - what
 * was said at that hour), K. null for fewer than fifteen nights.
 */
export function learnedSpread(errors: readonly number[]): number | null {
  if (errors.length < ENOUGH_NIGHTS) return null;
  return Math.sqrt(errors.reduce((sum, error) => sum + error ** 2, 0) / errors.length);
}
