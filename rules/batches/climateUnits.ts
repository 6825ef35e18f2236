import { expectRange } from '../expectRange.ts';
import { daysApartInYear } from '../heat/index.ts';
import { straightLine } from '../statistics/index.ts';

const WINDOW = 7; // days either side of the date; common practice, no source
const LOOK_BACK = 21; // days that map outdoors to a place; common practice, no source
const FEWEST = 3; // days for a line; ours

/**
 * Mean heat units of a date ± 7 days over imported and own years, °C d. null when no day of the
 * record is near it.
 * @param record days written `2025-10-15`; null units are passed over
 * @throws RangeError for what is no calendar day
 */
export function climateUnits(
  record: readonly { readonly day: string; readonly degreeDays: number | null }[],
  date: string,
): number | null {
  let sum = 0;
  let count = 0;
  for (const { day, degreeDays } of record) {
    if (degreeDays === null) continue;
    if (daysApartInYear(day, date) > WINDOW) continue;
    sum += degreeDays;
    count += 1;
  }
  return count === 0 ? null : sum / count;
}

/**
 * Heat units of a place from those outdoors, by the place's own straight line over the last 21
 * days, never less than nothing. null when fewer than three of them are known in both.
 * @param days oldest first, both in °C d
 * @param outdoors what outdoors is expected to bring
 * @throws RangeError for units outside 0..60 °C d
 */
export function placeUnits(
  days: readonly { readonly outdoors: number | null; readonly place: number | null }[],
  outdoors: number,
): number | null {
  expectRange('units outdoors', outdoors, 0, 60, '°C d');
  return placeLine(days)?.(outdoors) ?? null;
}

/** The same, made ready once for asking often. null when fewer than three days are known in both. */
export function placeLine(
  days: readonly { readonly outdoors: number | null; readonly place: number | null }[],
): ((outdoors: number) => number) | null {
  const known = days
    .slice(-LOOK_BACK)
    .flatMap((day) =>
      day.outdoors === null || day.place === null ? [] : [[day.outdoors, day.place] as const],
    );
  if (known.length < FEWEST) return null;
  const mean = known.reduce((sum, [, place]) => sum + place, 0) / known.length;
  const line = straightLine(
    known.map(([outside]) => outside),
    known.map(([, place]) => place),
  );
  // Days all alike outdoors leave no line; their mean is all there is.
  return (outdoors) => Math.max(0, line === null ? mean : line.intercept + line.slope * outdoors);
}
