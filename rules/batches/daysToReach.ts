import { expectRange } from '../expectRange.ts';
import { median } from '../statistics/index.ts';

/**
 * Days until daily units sum to `need`, the last day in part. 0 when nothing is needed; null when
 * the days given do not reach it.
 * @throws RangeError for units of a day outside 0..60 °C d, or a need outside 0..10,000
 */
export function daysToReach(units: readonly number[], need: number): number | null {
  expectRange('units needed', need, 0, 10_000, '°C d');
  let left = need;
  if (left <= 0) return 0;
  for (const [index, each] of units.entries()) {
    expectRange('units of a day', each, 0, 60, '°C d');
    if (each >= left) return index + left / each;
    left -= each;
  }
  return null;
}

/**
 * Past years run forward from today's date, each until `need` is reached: on which day (1 is the
 * first) it was in each year, null where the year's days did not reach it; and the median, null
 * when half of the years or more did not. Preferred to unitsAhead with eight years or more: their
 * spread is the climate's part of the doubt.
 * @throws RangeError as daysToReach
 */
export function replayYears(
  years: readonly (readonly number[])[],
  need: number,
): { readonly days: readonly (number | null)[]; readonly median: number | null } {
  const days = years.map((units) => {
    const reached = daysToReach(units, need);
    return reached === null ? null : Math.ceil(reached);
  });
  // As long as fewer than half are missing, the ones in the middle are known.
  const missing = days.filter((day) => day === null).length;
  if (2 * missing >= days.length) return { days, median: null };
  return { days, median: median(days.map((day) => day ?? Number.MAX_VALUE)) };
}
