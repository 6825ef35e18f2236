import { expectRange } from '../expectRange.ts';
import { type RatioInterval, studentQuantile } from '../statistics/index.ts';

const CONFIDENCE = 0.8; // ours, as in worthItsHours
const FEWEST = 3; // as in worthItsHours; ours
const MOST = 50; // batches; ours: what takes more is too near the wage to matter

/**
 * How many batches more it takes until an interval like this one no longer holds the wage, if they
 * scatter as those known do: the width goes down with the root of their number, by Student's t. 0
 * where it is told already; null where not even fifty would tell, as what is earned lies too near
 * the wage. Below three batches: as many as are missing to three.
 *
 * Source: sample size for a given half-width (any text on sampling), iterated as t changes with n.
 * @param known of earnings per hour: ratioInterval; null without any batch
 * @throws RangeError for a wage below 0 or a confidence outside 0.5..0.99
 */
export function batchesToTell(
  known: RatioInterval | null,
  wage: number,
  confidence: number = CONFIDENCE,
): number | null {
  expectRange('wage', wage, 0, Number.MAX_VALUE, 'of money');
  expectRange('confidence', confidence, 0.5, 0.99, '');
  const n = known?.n ?? 0;
  if (known === null || known.low === null || n < FEWEST) return Math.max(1, FEWEST - n);
  const t = (count: number) => studentQuantile((1 + confidence) / 2, count - 1);
  const gap = Math.abs(known.ratio - wage);
  const half = known.ratio - known.low;
  if (half < gap) return 0;
  const spread = (half / t(n)) * Math.sqrt(n);
  for (let all = n + 1; all <= n + MOST; all += 1)
    if ((t(all) * spread) / Math.sqrt(all) < gap) return all - n;
  return null;
}
