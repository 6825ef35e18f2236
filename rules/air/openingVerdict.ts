import { orUnknown } from '../orUnknown.ts';
import type { GramsPerCubicMetre } from '../units.ts';
import { CLEAR_GAIN } from './ventGain.ts';

/** What opening does to the water in a house. */
export type OpeningVerdict = 'dries' | 'no-clear-difference' | 'adds-water';

/**
 * Whether a gain (see ventGain) is more than two good probes differ by chance: from 0.3 g/m³ up
 * opening dries, from -0.3 down it adds water. Null for a null.
 */
export const openingVerdict = orUnknown(function openingVerdict(
  gain: GramsPerCubicMetre,
): OpeningVerdict {
  if (Number.isNaN(gain)) throw new RangeError(`Expected gain in g/m³, got ${gain}`);
  if (gain >= CLEAR_GAIN) return 'dries';
  return gain <= -CLEAR_GAIN ? 'adds-water' : 'no-clear-difference';
});
