import { meanAboveLine } from '../../rules/heat/index.ts';
import type { Rollup } from '../store/index.ts';
import type { HeatRule } from './heatRule.ts';

const DAY = 24; // h

/**
 * Heat units of an hour of which minimum, maximum and mean are kept, °C d. Exact where the hour
 * stays on one side of each threshold; where it crosses one it is taken as a straight line from its
 * minimum to its maximum (ours).
 */
export function hourHeat({ min, max, sum, n }: Rollup, { lower, upper }: HeatRule): number {
  const above = (threshold: number) =>
    min >= threshold ? sum / n - threshold : meanAboveLine(min, max, threshold);
  return Math.max(0, above(lower) - (upper === null ? 0 : above(upper))) / DAY;
}
