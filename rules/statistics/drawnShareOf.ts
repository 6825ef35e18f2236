import { type Probability, probability } from '../units.ts';
import { expectCount } from './expectCount.ts';

/**
 * Chance from random rearrangements: (b + 1) / (m + 1), with `asStrong` (b) of `draws` (m) at least
 * as far out as what was seen. The observed arrangement is one of them, so this is never 0.
 *
 * Source: Davison & Hinkley 1997, Bootstrap Methods and their Application, 4.2 (from memory).
 * @throws RangeError unless both are whole numbers and asStrong is from 0 to draws
 */
export function drawnShareOf(asStrong: number, draws: number): Probability {
  expectCount('draws', draws, 1);
  expectCount('draws as strong', asStrong, 0, draws);
  return probability((asStrong + 1) / (draws + 1));
}
