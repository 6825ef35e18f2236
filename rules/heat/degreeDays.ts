import { expectRange } from '../expectRange.ts';
import { type DegreeDays, degreeDaysOf, HOUR, type Hours, hours, type Instant } from '../units.ts';
import type { Cutoff } from './dailyDegreeDays.ts';
import { meanAboveLine, timeAboveLine } from './lineAbove.ts';
import { type MaybeTemperature, USUAL_MAX_GAP } from './temperatureReading.ts';
import { walkSegments } from './walkSegments.ts';

const DAY = 24 * HOUR;

/**
 * Heat units over known time, and the hours not known.
 *
 * Exact: readings are joined by straight lines, each cut where it crosses a threshold or the
 * window. Above `upper` growth stays at its fastest unless another cut-off is asked for. A null,
 * and a gap longer than `maxGapMinutes`, add nothing and are unknown; so is the part of the window
 * before the first and after the last reading. Without a window, that is first to last reading.
 * @throws RangeError for an upper threshold below the lower, or readings not in order of time
 */
export function degreeDays(
  readings: readonly MaybeTemperature[],
  rule: {
    readonly lower: number;
    readonly upper?: number | undefined;
    readonly cutoff?: Cutoff | undefined;
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
  const rate = rateOfLine(lower, upper, rule.cutoff ?? 'horizontal');
  let sum = 0; // °C ms
  const covered = walkSegments(readings, maxGapMinutes, from, to, (length, start, end) => {
    sum += length * rate(start, end);
  });
  return {
    degreeDays: degreeDaysOf(sum / DAY),
    unknownHours: hours(Math.max(0, to - from - covered) / HOUR),
  };
}

// Mean rate along a straight line. Each rate is a sum of "height above a threshold", so that a
// line needs no cutting by hand; the intermediate one is clipped where it would fall below nothing.
function rateOfLine(lower: number, upper: number, cutoff: Cutoff) {
  const above = meanAboveLine;
  if (upper === Number.POSITIVE_INFINITY)
    return (start: number, end: number) => above(start, end, lower);
  if (cutoff === 'vertical')
    return (start: number, end: number) =>
      above(start, end, lower) -
      above(start, end, upper) -
      (upper - lower) * timeAboveLine(start, end, upper);
  if (cutoff === 'intermediate')
    return (start: number, end: number) =>
      above(start, end, lower) -
      2 * above(start, end, upper) +
      above(start, end, 2 * upper - lower);
  return (start: number, end: number) => above(start, end, lower) - above(start, end, upper);
}
