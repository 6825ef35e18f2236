import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { expectNumbers } from './expectNumbers.ts';

/**
 * The value below which the share `p` (0..1) of `values` lies: type 7 of Hyndman & Fan 1996,
 * Am. Stat. 50:361, position (n - 1) p, straight line between neighbours. The order of `values`
 * does not matter and is left as it is.
 * @throws RangeError for an empty list, a value that is no number, or p outside 0..1
 */
export const percentile = orUnknown(function percentile(
  values: readonly number[],
  p: number,
): number {
  expectRange('share', p, 0, 1, '');
  expectRange('number of values', values.length, 1, Number.POSITIVE_INFINITY, '');
  expectNumbers('value', values);
  const sorted = Float64Array.from(values).sort();
  const position = (sorted.length - 1) * p;
  const below = Math.floor(position);
  const lower = sorted[below] ?? Number.NaN;
  const upper = sorted[below + 1] ?? lower;
  return lower + (position - below) * (upper - lower);
});
