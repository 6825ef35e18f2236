import { startingBase } from '../../rules/heat/index.ts';
import { type Farm, USUAL_BASE } from '../farm/index.ts';
import type { HeatRule } from './heatRule.ts';

/** What a crop's heat units are counted from, and who says so. */
export type CropBase = HeatRule & {
  /** `own`: learned from own sowings; `told`: in the farm file; `usual`: 10 °C, for want of better. */
  readonly from: 'own' | 'told' | 'table' | 'usual';
};

const LEAST_SPAN = 5; // K between the thresholds; ours: a farm file may tell a base above the table's

/** Where to begin: what the grower tells, else the table of starting bases. */
export function toldBase(farm: Farm, crop: string): CropBase {
  const told = farm.crop(crop);
  const table = startingBase(crop);
  const lower = told?.base ?? table?.lower ?? USUAL_BASE;
  const most = table?.upper ?? told?.heatLimit ?? null;
  const upper = most !== null && most >= lower + LEAST_SPAN ? most : null;
  const from = told?.base !== undefined ? 'told' : table === null ? 'usual' : 'table';
  return { lower, upper, from };
}
