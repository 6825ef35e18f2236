import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';
import { batchSpread } from './batchSpread.ts';
import { expectGrowing, type GrowingBatch } from './harvestWindow.ts';

/**
 * Expected days left, and their standard deviation from both the batches' spread and the weather's:
 * √[(s √(1 + 1/n) / r)² + (D s_r / r)²]. 0 days left when the units are in. null where no warmth is
 * to come.
 * @param perDaySd standard deviation of the units per day, as an error of the whole period, °C d
 * @throws RangeError as harvestWindow, or for a spread outside 0..60 °C d
 */
export const daysToHarvest = orUnknownField(function daysToHarvest(
  batch: GrowingBatch & { readonly perDaySd: number },
): { readonly days: number; readonly sd: number } | null {
  const { pastDegreeDays, soFar, perDay, perDaySd } = batch;
  const { mean, sd } = batchSpread(pastDegreeDays);
  expectGrowing(batch);
  expectRange('spread of units per day', perDaySd, 0, 60, '°C d');
  if (perDay === 0) return null;
  const days = Math.max(0, mean - soFar) / perDay;
  return { days, sd: Math.hypot(sd / perDay, (days * perDaySd) / perDay) };
});
