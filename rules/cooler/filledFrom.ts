import type { MaybeTemperature } from '../heat/index.ts';
import { seriesBetween, unknownSpans } from './seriesBetween.ts';

/**
 * A series whose unknown stretches are filled from another probe's readings, where that one knows:
 * the probe in a crate speaks first, the one in the air where it is silent.
 *
 * Source: as seriesBetween.
 * @param series as seriesBetween makes it: a null at every gap
 * @param readings of the other probe, °C, in order of time
 * @throws RangeError for readings not in order of time
 */
export function filledFrom(
  series: readonly MaybeTemperature[],
  readings: readonly MaybeTemperature[],
  gapMaxMinutes: number,
): MaybeTemperature[] {
  const filled: MaybeTemperature[] = [];
  const known = series.filter(({ value }) => value !== null);
  let next = 0;
  for (const { from, to } of unknownSpans(series)) {
    for (let one = known[next]; one !== undefined && one.t <= from; one = known[next]) {
      filled.push(one);
      next += 1;
    }
    // Two probes never agree to the last digit: no line is drawn from one to the other.
    filled.push(...seriesBetween(readings, { from, to, gapMaxMinutes }));
    // A reading alone between two gaps speaks for no time.
    while ((known[next]?.t ?? to) < to) next += 1;
  }
  return [...filled, ...known.slice(next)];
}
