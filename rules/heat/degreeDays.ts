import { expectRange } from '../expectRange.ts';
import { type DegreeDays, degreeDaysOf, HOUR, type Hours, hours, type Instant } from '../units.ts';
import { meanAboveLine } from './lineAbove.ts';
import { type TemperatureReading, USUAL_MAX_GAP } from './temperatureReading.ts';
import { walkSegments } from './walkSegments.ts';

const DAY = 24 * HOUR;

/**
 * Heat units over known time, and the hours not known.
 *
 * Exact: readings are joined by straight lines, each cut where it crosses a threshold or the
 * window. Above `upper` growth is taken to stay at its fastest (horizontal cut-off). A gap longer
 * than `maxGapMinutes` adds nothing and is unknown; so is the part of the window before the first
 * and after the last reading. Without a window, that is first to last reading.
 * @throws RangeError for an upper threshold below the lower, or readings not in order of time
 */
export function degreeDays(
  readings: readonly TemperatureReading[],
  rule: {
    readonly lower: number;
    readonly upper?: number | undefined;
    readonly maxGapMinutes?: number | undefined;
    readonly from?: Instant | undefined;
    readonly to?: Instant | undefined;
  },
): { readonly degreeDays: DegreeDays; readonly unknownHours: Hours } {
  const { lower, upper = Number.POSITIVE_INFINITY, maxGapMinutes = USUAL_MAX_GAP } = rule;
  expectRange('lower threshold', lower, -100, 200, '°C');
  expectRange('upper threshold', upper, lower, Number.POSITIVE_INFINITY, '°C');
  expectRange('longest time between readings', maxGapMinutes, 0, 1440, 'min');

  const from = rule.from ?? readings[0]?.t ?? 0;
  const to = rule.to ?? readings.at(-1)?.t ?? from;
  let sum = 0; // °C ms
  const covered = walkSegments(readings, maxGapMinutes, from, to, (length, start, end) => {
    sum += length * (meanAboveLine(start, end, lower) - meanAboveLine(start, end, upper));
  });
  return {
    degreeDays: degreeDaysOf(sum / DAY),
    unknownHours: hours(Math.max(0, to - from - covered) / HOUR),
  };
}
