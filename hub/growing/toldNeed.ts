import type { BatchSpread } from '../../rules/batches/index.ts';
import { batchQuantile } from '../../rules/batches/index.ts';
import type { CutStage } from '../batches/index.ts';
import type { FarmCrop } from '../contract/index.ts';

/** What a grower tells is off by at least this, either way. Ours. */
const OFF = 0.25; // of the days, or of the heat
/** Heat of a told number of days is that of its own dates, so a cold spring counts for less. Ours. */
const LEAST = 1; // °C d

export type ToldDays = { readonly least: number; readonly most: number; readonly middle: number };

/** Days from sowing to the cut as the grower knows them; null where nobody told. */
export function toldDays(crop: FarmCrop | undefined, stage: CutStage): ToldDays | null {
  const days = stage === 'young' ? crop?.young?.days : crop?.days;
  if (days === undefined) return null;
  const [a, b] = typeof days === 'number' ? [days, days] : days;
  const [least, most] = [Math.min(a, b), Math.max(a, b)];
  return { least, most, middle: (least + most) / 2 };
}

/**
 * Heat that so many days usually bring from the day of sowing on, as a need with a wide spread: half
 * the difference between the least and the most days, at least a quarter. null where dates tell
 * nothing.
 * @param usual units of a date so many days after the sowing
 */
export function toldNeed(
  told: ToldDays,
  usual: (after: number) => number | null,
): BatchSpread | null {
  const sumTo = (days: number): number | null => {
    let sum = 0;
    for (let day = 0; day < days; day++) {
      const units = usual(day);
      if (units === null) return null;
      sum += units * Math.min(1, days - day);
    }
    return sum;
  };
  const [least, middle, most] = [sumTo(told.least), sumTo(told.middle), sumTo(told.most)];
  if (least === null || middle === null || most === null || middle < LEAST) return null;
  const half = Math.max((most - least) / 2, OFF * middle);
  const none: BatchSpread = { n: 0, mean: middle, sd: 1, df: null };
  return { ...none, sd: half / batchQuantile(none, 0.9) };
}

/** Days after sowing, where no heat is known at all: days alone are counted. */
export const daysAlone = ({ least, middle, most }: ToldDays) => ({
  early: Math.min(least, (1 - OFF) * middle),
  expected: middle,
  late: Math.max(most, (1 + OFF) * middle),
});
