import { MINUTE } from '../units.ts';
import type { MaybeTemperature } from './temperatureReading.ts';

/**
 * Visits each pair of neighbouring readings that are near enough to join by a straight line, cut
 * to the window, and returns the time covered, ms. A null is joined to neither neighbour.
 * @throws RangeError for readings not in order of time, or a value that is no number
 */
export function walkSegments<Reading extends MaybeTemperature>(
  readings: readonly Reading[],
  maxGapMinutes: number,
  from: number,
  to: number,
  visit: (length: number, start: number, end: number, left: Reading, right: Reading) => void,
): number {
  const maxGap = maxGapMinutes * MINUTE;
  let covered = 0;
  let before: Reading | null = null;
  for (const reading of readings) {
    const { t, value } = reading;
    if (value !== null && !(value > -273.15 && value < 1000)) {
      throw new RangeError(`Expected temperature from -273.15 to 1000 °C, got ${value}`);
    }
    if (before !== null) {
      const length = t - before.t;
      if (length < 0) {
        throw new RangeError(`Expected readings in order of time, got ${t} after ${before.t}`);
      }
      const begins = Math.max(before.t, from);
      const ends = Math.min(t, to);
      const left = before.value;
      const joins = length > 0 && length <= maxGap && ends > begins;
      if (joins && value !== null && left !== null) {
        const slope = (value - left) / length;
        const start = begins === before.t ? left : left + slope * (begins - before.t);
        const end = ends === t ? value : left + slope * (ends - before.t);
        visit(ends - begins, start, end, before, reading);
        covered += ends - begins;
      }
    }
    before = reading;
  }
  return covered;
}
