import { MINUTE } from '../units.ts';
import type { TemperatureReading } from './temperatureReading.ts';

/**
 * Visits each pair of neighbouring readings that are near enough to join by a straight line, cut
 * to the window, and returns the time covered, ms.
 * @throws RangeError for readings not in order of time, or a value that is no number
 */
export function walkSegments(
  readings: readonly TemperatureReading[],
  maxGapMinutes: number,
  from: number,
  to: number,
  visit: (length: number, start: number, end: number) => void,
): number {
  const maxGap = maxGapMinutes * MINUTE;
  let covered = 0;
  let before: TemperatureReading | null = null;
  for (const reading of readings) {
    if (!(reading.value > -273.15 && reading.value < 1000)) {
      throw new RangeError(`Expected temperature from -273.15 to 1000 °C, got ${reading.value}`);
    }
    if (before !== null) {
      const length = reading.t - before.t;
      if (length < 0) {
        throw new RangeError(
          `Expected readings in order of time, got ${reading.t} after ${before.t}`,
        );
      }
      const begins = Math.max(before.t, from);
      const ends = Math.min(reading.t, to);
      if (length > 0 && length <= maxGap && ends > begins) {
        const slope = (reading.value - before.value) / length;
        const start =
          begins === before.t ? before.value : before.value + slope * (begins - before.t);
        const end = ends === reading.t ? reading.value : before.value + slope * (ends - before.t);
        visit(ends - begins, start, end);
        covered += ends - begins;
      }
    }
    before = reading;
  }
  return covered;
}
