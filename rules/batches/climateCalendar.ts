import { dayOfCommonYear } from '../heat/index.ts';

const DAYS = 365;
const WINDOW = 7; // days either side of the date; common practice, no source, as in climateUnits

/**
 * The mean of a date ± 7 days over all years of a record, for any date: climateUnits, made ready
 * once for asking often. null where no day of the record is near the date.
 *
 * Source: common practice, no source.
 * @param record days written `2025-10-15`; null values are passed over
 * @throws RangeError for what is no calendar day
 */
export function climateCalendar(
  record: readonly { readonly day: string; readonly value: number | null }[],
): (date: string) => number | null {
  const sums = new Float64Array(DAYS);
  const counts = new Float64Array(DAYS);
  for (const { day, value } of record) {
    if (value === null) continue;
    const at = dayOfCommonYear(day) - 1;
    sums[at] = (sums[at] ?? 0) + value;
    counts[at] = (counts[at] ?? 0) + 1;
  }
  return (date) => {
    const middle = dayOfCommonYear(date) - 1 + DAYS;
    let sum = 0;
    let count = 0;
    for (let at = middle - WINDOW; at <= middle + WINDOW; at += 1) {
      sum += sums[at % DAYS] ?? 0;
      count += counts[at % DAYS] ?? 0;
    }
    return count === 0 ? null : sum / count;
  };
}
