import { unitsAhead } from '../../rules/batches/index.ts';
import type { Calendar } from '../clock.ts';
import type { PlaceClimate } from './placeClimate.ts';

/** A past year stands for what may come only if it is known nearly whole. Ours. */
const MOST_MISSING = 0.1; // share of its days

/** Heat to come, °C d a day, from a day on. */
export type Ahead = {
  /** Expected of each day: what is usual then, and any forecast pushed; null where nothing tells. */
  readonly mean: readonly number[] | null;
  /** What each past year brought from the same date on. */
  readonly years: readonly (readonly number[])[];
  readonly from: 'measured' | 'station' | null;
  /** Mean of the place's last days, for want of better; null where not known. */
  readonly lately: number | null;
};

/** The newest forecast for a place: units of a day, and how far each day ahead is believed. */
export type Foretold = {
  units(day: string): number | null;
  weight(lead: number): number;
};

/** Days from `fromDay` on, as years before brought them, with what a forecast says of the first. */
export function aheadOf(
  climate: PlaceClimate,
  foretold: Foretold | null,
  calendar: Calendar,
  { fromDay, days, today }: { fromDay: string; days: number; today: string },
): Ahead {
  const dates = Array.from({ length: days }, (_, i) => calendar.add(fromDay, i));
  const { from, lately } = climate;
  const usual = dates.map((day) => climate.units(day));
  if (from === null || usual.some((units) => units === null))
    return { mean: null, years: [], from: null, lately };
  const expected = usual as number[];
  const lead = (index: number) => leadOf(calendar, today, dates[index] as string);
  const said = dates.map((day) => foretold?.units(day) ?? null);
  const weightAt = (index: number) => {
    const ahead = lead(index);
    return ahead < 0 ? 0 : (foretold?.weight(ahead) ?? 0);
  };
  const years = climate.years.flatMap((year) => {
    const units = dates.map((day) => inYear(climate, year, day, dates[0] as string));
    const missing = units.filter((one) => one === null).length;
    if (missing > MOST_MISSING * days) return [];
    const whole = units.map((one, index) => one ?? (expected[index] as number));
    return [unitsAhead(said, whole, weightAt)];
  });
  return { mean: unitsAhead(said, expected, weightAt), years, from, lately };
}

/** The same date as `day`, in the year that stands for that of `first`: the new year may lie between. */
function inYear(climate: PlaceClimate, year: number, day: string, first: string): number | null {
  const own = year + Number(day.slice(0, 4)) - Number(first.slice(0, 4));
  const date = day.endsWith('-02-29') ? '02-28' : day.slice(5);
  return climate.measured(`${String(own).padStart(4, '0')}-${date}`);
}

/** Days between two days. */
const leadOf = (calendar: Calendar, from: string, to: string) =>
  from <= to
    ? Math.round((calendar.bounds(to).begins - calendar.bounds(from).begins) / 86_400_000)
    : -1;
