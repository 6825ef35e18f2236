import { dayAt, dayNumber } from '../heat/index.ts';
import type { StationValue } from './parseDly.ts';

/** What a station says of one day. */
export type StationDay = {
  readonly day: string;
  readonly min: number | null;
  readonly max: number | null;
  /** °C over the day, where the station tells it. */
  readonly mean?: number | null;
  /** mm; 0 with `trace` was wet all the same. */
  readonly rain: number | null;
  readonly trace: boolean;
};

/**
 * The values of one station put together day by day, in order; days it says nothing of are left
 * out. A reader who looks at the thermometer in the morning sees that morning's minimum and the
 * maximum of the day before: then maxima move a day back.
 * @param how `readInTheMorning` of this station; `forDates` drops values that may belong to a
 *   neighbouring day, as dates of frost want
 * @throws RangeError for values of more than one station
 */
export function stationDays(
  values: readonly StationValue[],
  how: { readonly readInTheMorning?: boolean; readonly forDates?: boolean } = {},
): readonly StationDay[] {
  const [first] = values;
  const days = new Map<string, { -readonly [Key in keyof StationDay]: StationDay[Key] }>();
  for (const { station, day: named, element, value, trace, lagged } of values) {
    if (station !== first?.station) {
      throw new RangeError(`Expected values of the station ${first?.station}, got ${station}`);
    }
    const back = element === 'TMAX' && how.readInTheMorning === true;
    const day = back ? dayAt(dayNumber(named) - 1) : named;
    const row = days.get(day) ?? { day, min: null, max: null, rain: null, trace: false };
    days.set(day, row);
    const fit = how.forDates === true && lagged ? null : value;
    if (element === 'TMIN') row.min = fit;
    if (element === 'TMAX') row.max = fit;
    if (element === 'TAVG') row.mean = fit;
    if (element === 'PRCP') {
      row.rain = fit;
      row.trace = trace;
    }
  }
  return [...days.values()].sort((a, b) => (a.day < b.day ? -1 : 1));
}

/**
 * Days as a reader wrote them down who looks at the thermometer in the morning: the minimum is of
 * that morning, the maximum of the day before, so maxima move a day back. Days in any order.
 */
export function morningReadersDays(days: readonly StationDay[]): readonly StationDay[] {
  const moved = new Map<string, { -readonly [Key in keyof StationDay]: StationDay[Key] }>();
  for (const day of days) moved.set(day.day, { ...day, max: null });
  for (const { day, max } of days) {
    if (max === null) continue;
    const before = dayAt(dayNumber(day) - 1);
    const row = moved.get(before) ?? { day: before, min: null, max, rain: null, trace: false };
    moved.set(before, { ...row, max });
  }
  return [...moved.values()].sort((a, b) => (a.day < b.day ? -1 : 1));
}
