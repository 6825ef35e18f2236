import { expectRange } from '../expectRange.ts';

// Common practice, no source.
const AFTER_PICKING = 28; // days; mowing belongs to renovation straight after a summer crop
const HARD_FROST = -4; // °C
const SEVERAL = 3; // nights; ours, for "several"
const SHORT_DAY = 10.5; // h

/**
 * Whether cutting a strawberry patch back to the crown may be offered, and why: within four weeks
 * of the last picking of a June-bearing crop (renovation); after signs of dormancy, which are flat
 * and reddened leaves, or three nights below -4 °C with days shorter than 10.5 h; or because the
 * grower says so, which is recorded and not argued with twice. null otherwise: then take out
 * runners, dead or spotted leaves and rotten fruit, and keep the green leaves, without which plants
 * in growth chambers did not acclimate (Boyce, in Penn State 2015).
 * @param patch unknown facts as null; nothing unknown ever allows cutting
 * @throws RangeError for negative days, nights outside ±60 °C, or a day outside 0..24 h
 */
export function mayCutBack(patch: {
  readonly juneBearing: boolean | null;
  readonly daysSinceLastPicking: number | null;
  readonly leavesFlatAndRed: boolean | null;
  /** Lows of this autumn's nights, °C. */
  readonly lows: readonly (number | null)[];
  readonly dayLength: number | null;
  readonly growerInsists: boolean;
}): 'renovation' | 'dormant' | 'grower' | null {
  const { juneBearing, daysSinceLastPicking, leavesFlatAndRed, lows, dayLength } = patch;
  for (const low of lows) if (low !== null) expectRange('low of a night', low, -60, 60, '°C');
  if (dayLength !== null) expectRange('length of the day', dayLength, 0, 24, 'h');
  if (juneBearing === true && daysSinceLastPicking !== null) {
    expectRange('days since the last picking', daysSinceLastPicking, 0, 1000, 'd');
    if (daysSinceLastPicking <= AFTER_PICKING) return 'renovation';
  }
  const hard = lows.filter((low) => low !== null && low < HARD_FROST).length;
  const short = dayLength !== null && dayLength < SHORT_DAY;
  if (leavesFlatAndRed === true || (hard >= SEVERAL && short)) return 'dormant';
  return patch.growerInsists ? 'grower' : null;
}
