import { expectRange } from '../expectRange.ts';
import { type RatioInterval, type RatioPair, ratioInterval } from '../statistics/index.ts';
import type { BatchEarnings } from './batchEarnings.ts';
import { expectMoney } from './valuePerAreaDay.ts';

const CONFIDENCE = 0.8; // ours, a setting: two in ten wrong is what a season's plan can bear
const FEWEST = 3; // batches before anything is advised; ours

/** What the records bear about a crop, a place or a picking. */
export type WorthVerdict = 'pays' | 'does-not-pay' | 'cannot-tell';
export type Worth = {
  readonly verdict: WorthVerdict;
  /** Money per hour of work; null without any hours written down. */
  readonly perHour: RatioInterval | null;
  /** Money per tray and day of space; null without trays. */
  readonly perTrayDay: RatioInterval | null;
  /** Batches counted, and those left out because something of them is not known. */
  readonly counted: number;
  readonly leftOut: number;
};

/**
 * Whether a crop (or place, or picking) earns its hours: it pays when even the lower end of its
 * earnings per hour is above the going rate, it does not when even the upper end is below, and
 * between, or with fewer than three batches, nobody can tell.
 *
 * Sums are pooled, so a small batch counts little. A batch with anything unknown is left out and
 * counted apart.
 * Common practice, no source; the interval is ratioInterval's.
 * @param wage what an hour of work must bring, money
 * @throws RangeError for a negative wage or a confidence outside 0.5..0.99
 */
export function worthItsHours(
  batches: readonly (BatchEarnings | null)[],
  wage: number,
  confidence: number = CONFIDENCE,
): Worth {
  expectMoney('wage', wage);
  expectRange('confidence', confidence, 0.5, 0.99, '');
  const known = batches.filter((batch) => batch !== null);
  const over = (took: (batch: BatchEarnings) => number): RatioInterval | null => {
    const pairs: RatioPair[] = known.map((batch) => ({ got: batch.earned, took: took(batch) }));
    return ratioInterval(pairs, confidence);
  };
  const perHour = over(({ hours }) => hours);
  return {
    verdict: verdictOf(perHour, wage),
    perHour,
    perTrayDay: over(({ trayDays }) => trayDays),
    counted: known.length,
    leftOut: batches.length - known.length,
  };
}

function verdictOf(perHour: RatioInterval | null, wage: number): WorthVerdict {
  if (perHour === null || perHour.n < FEWEST) return 'cannot-tell';
  const { low, high } = perHour;
  if (low !== null && low > wage) return 'pays';
  if (high !== null && high < wage) return 'does-not-pay';
  return 'cannot-tell';
}
