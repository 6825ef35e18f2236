import { expectRange } from '../expectRange.ts';
import { straightLine } from '../statistics/index.ts';
import { HOUR, type Instant, instant } from '../units.ts';

/** Shorter stretches tell more of the probe than of the soil. Ours. */
const SHORTEST = 6; // h

/** How fast soil dries, and when it is as dry as its limit. */
export type SoilDrying = {
  /** Percentage points a day; below zero while it gets wetter. */
  readonly perDay: number;
  /** null while it does not dry. It may lie in the past. */
  readonly dryAt: Instant | null;
};

/**
 * How fast soil dries by its moisture probe, and when it reaches `limit` at that pace: a straight
 * line through the readings since it was wettest, because what was there before a watering or rain
 * says nothing of the drying after it; from the newest reading on. null where it was wettest less
 * than six hours before the newest reading: nobody knows the pace yet.
 *
 * Source: straight line by least squares (straightLine); the six hours are ours. Soil dries by day and
 * rests by night, so give it a day's readings.
 * @param readings soil moisture in %, as the probe says it, in order of time
 * @param limit %
 * @throws RangeError for moisture or a limit outside 0..100 %
 */
export function soilDrying(
  readings: readonly { readonly t: Instant; readonly value: number }[],
  limit: number,
): SoilDrying | null {
  expectRange('limit of soil moisture', limit, 0, 100, '%');
  let wettest = 0;
  for (const [i, { value }] of readings.entries()) {
    expectRange('soil moisture', value, 0, 100, '%');
    // Of a level stretch the first: a full soil that does not dry is seen to do so.
    if (value > (readings[wettest]?.value ?? 0)) wettest = i;
  }
  const [first, last] = [readings[wettest], readings.at(-1)];
  if (first === undefined || last === undefined || last.t - first.t < SHORTEST * HOUR) return null;
  const dried = readings.slice(wettest);
  const line = straightLine(
    dried.map(({ t }) => (t - first.t) / HOUR),
    dried.map(({ value }) => value),
  );
  if (line === null) return null;
  const { slope } = line;
  const dryAt = slope < 0 ? instant(last.t + ((limit - last.value) / slope) * HOUR) : null;
  return { perDay: 24 * (0 - slope), dryAt };
}
