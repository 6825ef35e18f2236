import { expectRange } from '../expectRange.ts';
import {
  type MaybeTemperature,
  meanAboveLine,
  timeAboveLine,
  walkSegments,
} from '../heat/index.ts';
import { medianInterval } from '../statistics/index.ts';
import { HOUR, type Hours, hours, MINUTE } from '../units.ts';

const GAP_STEPS = 3; // ours: more than three usual steps without a reading is a gap

/**
 * How long a series was above a limit, at or below it, and not known; the three add up to the time
 * from the first reading to the last; `worstHours` is above + unknown. `degreeHours` is
 * how far above, times how long, °C h. Readings are joined by straight lines, cut at the limit.
 *
 * It states time, not safety: what a time means for food is for the local officer to say.
 * A null among the readings is not known, and neither is the time on both sides of it.
 * @param gapMaxMinutes a longer time between readings is unknown; three usual steps when not given
 * @throws RangeError for readings not in order of time
 */
export function timeAbove(
  readings: readonly MaybeTemperature[],
  limit: number,
  { gapMaxMinutes }: { readonly gapMaxMinutes?: number | undefined } = {},
): {
  readonly aboveHours: Hours;
  readonly belowHours: Hours;
  readonly unknownHours: Hours;
  readonly worstHours: Hours;
  readonly degreeHours: number;
} {
  expectRange('limit', limit, -60, 80, '°C');
  const gapMax = gapMaxMinutes ?? (GAP_STEPS * (medianInterval(readings) ?? 0)) / MINUTE;
  expectRange('longest time between readings', gapMax, 0, Number.MAX_VALUE, 'min');
  const from = readings[0]?.t ?? 0;
  const to = readings.at(-1)?.t ?? from;
  let above = 0;
  let dose = 0;
  const covered = walkSegments(readings, gapMax, from, to, (length, start, end) => {
    above += length * timeAboveLine(start, end, limit);
    dose += length * meanAboveLine(start, end, limit);
  });
  return {
    aboveHours: hours(above / HOUR),
    belowHours: hours((covered - above) / HOUR),
    unknownHours: hours((to - from - covered) / HOUR),
    worstHours: hours((above + to - from - covered) / HOUR),
    degreeHours: dose / HOUR,
  };
}
