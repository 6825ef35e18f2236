import { HOUR, MINUTE } from '../units.ts';
import { standardHour } from './hourlyOffsets.ts';
import { type MaybeTemperature, USUAL_MAX_GAP } from './temperatureReading.ts';

const LONGEST_FILLED = 6; // h; common practice, no source

/** A reading, or what a paired probe says would have been read. */
export type FilledReading = MaybeTemperature & { readonly filled: boolean };

/**
 * Closes gaps of a series. Up to 90 minutes need nothing: readings are joined by a straight line,
 * past any null between them. From there to 6 h the paired probe's readings are put in, each with
 * the offset for its hour of the day, and marked as filled. Longer gaps stay, as does one where
 * the offset for an hour is not known.
 * @param offsets K to add to the paired probe, by hour of the day: hourlyOffsets
 */
export function fillGaps(
  readings: readonly MaybeTemperature[],
  paired: readonly MaybeTemperature[],
  rule: {
    readonly offsets: readonly (number | null)[];
    readonly standardOffsetMinutes: number;
    readonly longestLineMinutes?: number | undefined;
    readonly longestFilledHours?: number | undefined;
  },
): readonly FilledReading[] {
  const line = (rule.longestLineMinutes ?? USUAL_MAX_GAP) * MINUTE;
  const longest = (rule.longestFilledHours ?? LONGEST_FILLED) * HOUR;
  const whole: FilledReading[] = [];
  let next = 0; // of the paired readings
  for (const reading of readings) {
    if (reading.value === null) continue;
    const before = whole.at(-1);
    const gap = before === undefined ? 0 : reading.t - before.t;
    if (before !== undefined && gap > line && gap <= longest) {
      while ((paired[next]?.t ?? reading.t) <= before.t) next += 1;
      for (let each = paired[next]; each && each.t < reading.t; each = paired[next]) {
        next += 1;
        const offset = rule.offsets[standardHour(each.t, rule.standardOffsetMinutes)] ?? null;
        if (each.value === null || offset === null) continue;
        whole.push({ t: each.t, value: each.value + offset, filled: true });
      }
    }
    whole.push({ t: reading.t, value: reading.value, filled: false });
  }
  return whole;
}
