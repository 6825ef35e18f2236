import { median } from '../statistics/index.ts';
import { HOUR, type Instant, MINUTE } from '../units.ts';
import { type MaybeTemperature, USUAL_MAX_GAP } from './temperatureReading.ts';

const DAY = 24 * HOUR;
const LOOK_BACK = 14; // days; common practice, no source

/** Hour of the day, 0..23, in the farm's standard time (no summer-time jump). */
export const standardHour = (t: number, standardOffsetMinutes: number): number =>
  Math.floor(((((t + standardOffsetMinutes * MINUTE) % DAY) + DAY) % DAY) / HOUR);

/**
 * How much warmer one probe is than another in the same structure, K, for each hour of the day:
 * the median over the past fourteen days. null for hours in which they were never both read.
 * @param standardOffsetMinutes minutes to add to UTC for the farm's standard time
 */
export function hourlyOffsets(
  probe: readonly MaybeTemperature[],
  paired: readonly MaybeTemperature[],
  rule: {
    readonly until: Instant;
    readonly standardOffsetMinutes: number;
    readonly days?: number | undefined;
  },
): readonly (number | null)[] {
  const { until, standardOffsetMinutes, days = LOOK_BACK } = rule;
  const byHour = Array.from({ length: 24 }, (): number[] => []);
  const pairedAt = lineThrough(paired);
  for (const { t, value } of probe) {
    if (value === null || t >= until || t < until - days * DAY) continue;
    const other = pairedAt(t);
    if (other !== null) byHour[standardHour(t, standardOffsetMinutes)]?.push(value - other);
  }
  return byHour.map((offsets) => (offsets.length === 0 ? null : median(offsets)));
}

// The value between two neighbouring readings; asked for in order of time.
function lineThrough(readings: readonly MaybeTemperature[]) {
  let next = 0;
  return (t: number): number | null => {
    while ((readings[next]?.t ?? t) < t) next += 1;
    const after = readings[next];
    const before = after?.t === t ? after : readings[next - 1];
    if (after === undefined || before === undefined) return null;
    if (after.value === null || before.value === null) return null;
    if (after.t === before.t) return after.value;
    if (after.t - before.t > USUAL_MAX_GAP * MINUTE) return null;
    return before.value + ((after.value - before.value) * (t - before.t)) / (after.t - before.t);
  };
}
