import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';
import { studentCdf } from '../statistics/index.ts';
import type { Probability } from '../units.ts';
import { conditionalOdds } from './conditionalOdds.ts';

const ENOUGH_FOR_A_CURVE = 15; // seasons for a fitted distribution; ours, after common practice
const ENOUGH_TO_COUNT = 8; // seasons for plain counting; ours
const WHOLE_DAYS = Math.sqrt(1 / 12); // d; the spread that rounding to days makes by itself

/**
 * Chance that the season's frost comes within the next `days`, given that it has not come by
 * `day`. Dates are season days (days since 1 July, or since 1 January in the south), one for each
 * past season: of its first autumn frost, or of its last spring frost.
 *
 * 15 seasons or more: a t distribution with the mean and spread of those dates and one new season
 * in mind; the normal curve is overconfident late in the season. 8 to 14: counting, (k + 1/2) of
 * (m + 1) seasons that were still to freeze. null, not known, for fewer, or when no season counted
 * froze as late as this.
 *
 * Source: Snyder & de Melo-Abreu 2005, FAO Env. & Nat. Res. Series 10, vol. 2, ch. 1.
 * @param share of seasons that have such a frost at all, 0..1; 1 when not given
 * @throws RangeError for dates outside 0..366 or a negative time ahead
 */
export const frostOdds = orUnknownField(function frostOdds(
  lastOrFirstDates: readonly number[],
  {
    day,
    days,
    share = 1,
  }: { readonly day: number; readonly days: number; readonly share?: number },
): Probability | null {
  for (const date of lastOrFirstDates) expectRange('season day of frost', date, 0, 366, '');
  expectRange('season day', day, 0, 366, '');
  expectRange('days ahead', days, 0, 366, '');

  const n = lastOrFirstDates.length;
  if (n < ENOUGH_TO_COUNT) return null;
  if (n < ENOUGH_FOR_A_CURVE) {
    const still = lastOrFirstDates.filter((date) => date > day);
    if (still.length === 0) return null;
    const soon = still.filter((date) => date <= day + days).length;
    const spared = days === 0 ? 1 : 1 - (soon + 0.5) / (still.length + 1);
    const now = still.length / n;
    return conditionalOdds({ now, later: now * spared, share });
  }
  const mean = lastOrFirstDates.reduce((sum, date) => sum + date, 0) / n;
  const squares = lastOrFirstDates.reduce((sum, date) => sum + (date - mean) ** 2, 0);
  const sd = Math.max(Math.sqrt(squares / (n - 1)), WHOLE_DAYS);
  const spread = sd * Math.sqrt(1 + 1 / n);
  // Seen from above, so that the far end of the season keeps its digits.
  const sparedUntil = (date: number) => studentCdf((mean - date) / spread, n - 1);
  return conditionalOdds({ now: sparedUntil(day), later: sparedUntil(day + days), share });
});
