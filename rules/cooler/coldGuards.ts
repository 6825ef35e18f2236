import { expectRange } from '../expectRange.ts';
import { type MaybeTemperature, timeAboveLine, walkSegments } from '../heat/index.ts';
import { type Instant, MINUTE } from '../units.ts';

// Common practice, no source.
const FROZEN_FOR = 15; // minutes
const ICE = 0; // °C; leaves freeze a little below

/**
 * Whether a crop must be warned about before it is put away in a room: the room's median over 24
 * hours lies below what the crop bears. false for a crop that bears cold, null where either is not
 * known. A warning may be overridden by name.
 * @param chillMin °C; null for a crop that is not hurt by cold
 * @param roomMedian °C over 24 h; null for not known
 * @throws RangeError for temperatures outside -60..80 °C
 */
export function chillingWarning(
  chillMin: number | null,
  roomMedian: number | null,
): boolean | null {
  if (chillMin === null) return false;
  if (roomMedian === null) return null;
  expectRange('chilling limit', chillMin, -60, 80, '°C');
  expectRange('room temperature', roomMedian, -60, 80, '°C');
  return roomMedian < chillMin;
}

/**
 * Whether stored leaves are freezing: the probe below 0 °C without a break for the last 15
 * minutes. Urgent, of the same rank as too warm. null when those minutes are not all known.
 * @throws RangeError for readings not in order of time
 */
export function freezingNow(
  readings: readonly MaybeTemperature[],
  now: Instant,
  { gapMaxMinutes = 10 }: { readonly gapMaxMinutes?: number } = {},
): boolean | null {
  const from = now - FROZEN_FOR * MINUTE;
  const last = readings.at(-1);
  if (last === undefined) return null;
  let above = 0;
  const covered = walkSegments(readings, gapMaxMinutes, from, now, (length, start, end) => {
    above += length * (start === ICE && end === ICE ? 1 : timeAboveLine(start, end, ICE));
  });
  if (above > 0 || (last.value !== null && last.value >= ICE && last.t > from)) return false;
  // A minute or two after the last reading are no gap as long as the next is not due.
  const tail = now - last.t;
  const known = covered + (tail > 0 && tail <= gapMaxMinutes * MINUTE ? tail : 0);
  return last.value !== null && known >= FROZEN_FOR * MINUTE ? true : null;
}
