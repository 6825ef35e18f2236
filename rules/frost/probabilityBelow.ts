import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';
import { studentCdf } from '../statistics/index.ts';
import { type Probability, probability } from '../units.ts';

/**
 * Chance that the low falls below `threshold` (°C). With no spread at all it is 0 or 1, and 0 at
 * the threshold itself.
 * @throws RangeError for a negative spread, or fewer than 0.1 degrees of freedom
 */
export const probabilityBelow = orUnknownField(function probabilityBelow(
  low: { readonly mean: number; readonly sd: number; readonly df: number },
  threshold: number,
): Probability {
  const { mean, sd, df } = low;
  expectRange('mean', mean, -100, 100, '°C');
  expectRange('spread', sd, 0, 100, 'K');
  expectRange('threshold', threshold, -100, 100, '°C');
  if (sd === 0) return probability(mean < threshold ? 1 : 0);
  return studentCdf((threshold - mean) / sd, df);
});
