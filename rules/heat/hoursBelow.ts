import { expectRange } from '../expectRange.ts';
import { HOUR, type Hours, hours } from '../units.ts';
import { meanAboveLine, timeAboveLine } from './lineAbove.ts';
import { type MaybeTemperature, USUAL_MAX_GAP } from './temperatureReading.ts';
import { walkSegments } from './walkSegments.ts';

/**
 * How long a series stayed below a threshold, and the degree-hours below it (°C h): the dose of
 * a frost or of chilling. Joined by straight lines and cut at the crossings; a null, and
 * time in gaps longer than `maxGapMinutes`, are unknown.
 * @throws RangeError for readings not in order of time
 */
export function hoursBelow(
  readings: readonly MaybeTemperature[],
  threshold: number,
  { maxGapMinutes = USUAL_MAX_GAP }: { readonly maxGapMinutes?: number } = {},
): { readonly hours: Hours; readonly degreeHours: number; readonly unknownHours: Hours } {
  expectRange('threshold', threshold, -100, 200, '°C');
  expectRange('longest time between readings', maxGapMinutes, 0, 1440, 'min');
  const from = readings[0]?.t ?? 0;
  const to = readings.at(-1)?.t ?? from;
  let below = 0;
  let dose = 0;
  const covered = walkSegments(readings, maxGapMinutes, from, to, (length, start, end) => {
    // Below is above, seen upside down.
    below += length * timeAboveLine(-start, -end, -threshold);
    dose += length * meanAboveLine(-start, -end, -threshold);
  });
  return {
    hours: hours(below / HOUR),
    degreeHours: dose / HOUR,
    unknownHours: hours((to - from - covered) / HOUR),
  };
}
