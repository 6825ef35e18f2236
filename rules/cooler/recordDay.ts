import type { MaybeTemperature } from '../heat/index.ts';
import type { Celsius, Hours, Instant, Probability } from '../units.ts';
import { celsius, HOUR, hours } from '../units.ts';
import { meanKineticOfReadings } from './meanKineticTemperature.ts';
import { ANY_GAP, unknownSpans } from './seriesBetween.ts';
import { timeAbove } from './timeAbove.ts';

/** One stretch of a temperature record, usually a day. Time is stated, never safety. */
export type RecordDay = {
  readonly aboveHours: Hours;
  /** At or below the limit, and known to be. */
  readonly belowHours: Hours;
  readonly unknownHours: Hours;
  /** Above and unknown together. */
  readonly worstHours: Hours;
  readonly degreeHours: number;
  readonly highest: Celsius | null;
  readonly lowest: Celsius | null;
  /** null under 90 % known. */
  readonly meanKinetic: Celsius | null;
  readonly knownShare: Probability;
  readonly gaps: readonly { readonly from: Instant; readonly to: Instant }[];
};

/**
 * What a record says of one stretch: hours above a limit, hours at or below it, and hours not known,
 * which add up to the whole of it; the highest and the lowest reading; the mean kinetic temperature.
 *
 * Source: straight lines between readings, cut at the limit; USP <1160> for the mean.
 * @param series as seriesBetween makes it: from the stretch's begin to its end, a null at every gap
 * @throws RangeError for readings not in order of time
 */
export function recordDay(series: readonly MaybeTemperature[], limit: number): RecordDay {
  const from = series[0]?.t ?? 0;
  const to = series.at(-1)?.t ?? from;
  const { aboveHours, degreeHours } = timeAbove(series, limit, { gapMaxMinutes: ANY_GAP });
  const gaps = unknownSpans(series);
  const unknown = gaps.reduce((sum, gap) => sum + (gap.to - gap.from), 0) / HOUR;
  let highest: number | null = null;
  let lowest: number | null = null;
  for (const { value } of series) {
    if (value === null) continue;
    if (highest === null || value > highest) highest = value;
    if (lowest === null || value < lowest) lowest = value;
  }
  const mean = meanKineticOfReadings(series, { gapMaxMinutes: ANY_GAP });
  // What is left over, and not a sum of its own: the three make up the day.
  const below = Math.max(0, (to - from) / HOUR - unknown - aboveHours);
  return {
    aboveHours,
    belowHours: hours(below),
    unknownHours: hours(unknown),
    worstHours: hours(aboveHours + unknown),
    degreeHours,
    highest: highest === null ? null : celsius(highest),
    lowest: lowest === null ? null : celsius(lowest),
    meanKinetic: mean.temperature,
    knownShare: mean.knownShare,
    gaps,
  };
}
