import { expectRange } from '../expectRange.ts';
import type { Probability } from '../units.ts';
import { batchQuantile, batchSpread } from './batchSpread.ts';
import { readyProbability } from './readyProbability.ts';

const USUAL_CHANCE = 0.9; // of being ready; common practice, no source: a setting
const MOST_EARLY = 0.1; // chance of being ready before it can be kept; ours, a setting

export type SowingDay = {
  /** Heat units to sow for, °C d. */
  readonly target: number;
  /** Days before the delivery day to sow on; null when the days given do not reach back so far. */
  readonly daysBefore: number | null;
  /** Chances when sown on that day, or today when that is past; null with one or two past batches. */
  readonly ready: Probability | null;
  /** Of being ready more than the keeping time before the delivery day. */
  readonly tooEarly: Probability | null;
  /** That day has passed: `ready` is the chance of making the day all the same, sown today. */
  readonly late: boolean;
  /**
   * When one sowing can not be both ready and fresh: days before for a second, smaller sowing that
   * is not too early. null when one will do, or nothing can be told.
   */
  readonly second: number | null;
};

/**
 * When to sow for a delivery day: units are summed backwards from it until one new batch is ready
 * with the wanted chance (mean + t(n - 1, q) s √(1 + 1/n)); then the early side is looked at, which
 * is being ready before it can be kept.
 * @param plan `unitsBefore`: expected units one day before the delivery day, two days before, …;
 *   `keepDays`: how long it keeps, in place or in the cool room; `daysLeft`: from today to that day
 * @throws RangeError for a chance outside 0.5..0.99, or as batchSpread
 */
export function sowingDay(plan: {
  readonly pastDegreeDays: readonly number[];
  readonly unitsBefore: readonly number[];
  readonly keepDays: number;
  readonly daysLeft?: number | undefined;
  readonly chance?: number | undefined;
  readonly mostEarly?: number | undefined;
}): SowingDay {
  const { pastDegreeDays, unitsBefore, keepDays } = plan;
  const { chance = USUAL_CHANCE, mostEarly = MOST_EARLY } = plan;
  const { daysLeft = Number.POSITIVE_INFINITY } = plan;
  expectRange('wanted chance', chance, 0.5, 0.99, '');
  expectRange('chance of being too early', mostEarly, 0, 1, '');
  expectRange('days it keeps', keepDays, 0, 60, 'd');
  expectRange('days left', daysLeft, 0, Number.POSITIVE_INFINITY, 'd');
  for (const units of unitsBefore) expectRange('units of a day', units, 0, 60, '°C d');

  const spread = batchSpread(pastDegreeDays);
  const target = spread.mean + batchQuantile(spread, chance) * spread.sd;
  // Units from a sowing so many days before up to some days before the delivery day.
  const between = (sown: number, until: number) =>
    unitsBefore.slice(until, sown).reduce((sum, units) => sum + units, 0);
  const readyBy = (sown: number, until: number) =>
    readyProbability(pastDegreeDays, between(sown, Math.ceil(until)));

  let wanted: number | null = null;
  for (let days = 0, sum = 0; days < unitsBefore.length && wanted === null; days += 1) {
    sum += unitsBefore[days] ?? 0;
    if (sum >= target) wanted = days + 1;
  }
  const late = (wanted ?? unitsBefore.length) > daysLeft;
  const sown = late ? Math.floor(daysLeft) : wanted;
  if (sown === null) {
    return { target, daysBefore: null, ready: null, tooEarly: null, late, second: null };
  }
  const tooEarly = readyBy(sown, keepDays);
  let second: number | null = null;
  if (!late && tooEarly !== null && tooEarly > mostEarly) {
    second = sown;
    while (second > 0 && (readyBy(second, keepDays) ?? 0) > mostEarly) second -= 1;
  }
  return { target, daysBefore: wanted, ready: readyBy(sown, 0), tooEarly, late, second };
}
