import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { type Probability, probability } from '../units.ts';

const MOST = 1000; // ours: beyond it nothing of the old air is left

/**
 * Share of the air that has been replaced after n air changes, 0..1, when what comes in mixes at
 * once with what is there: 1 - exp(-n). Null for a null.
 *
 * Source: dilution of a well-mixed space (textbook, from memory).
 * @param airChanges volumes of the house that have passed through
 * @throws RangeError outside 0..1000
 */
export const shareExchanged = orUnknown(function shareExchanged(airChanges: number): Probability {
  expectRange('air changes', airChanges, 0, MOST, '');
  return probability(-Math.expm1(-airChanges));
});
