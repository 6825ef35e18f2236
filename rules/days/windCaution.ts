import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';

const KMH = 3.6; // km/h in 1 m/s
// Ours. A research farm lost a tunnel's skin in winds over 50 km/h gusting to 80.
const NO_OPENING = 40; // km/h gusts
const SECURE = 50; // km/h gusts

/**
 * What gusts say about vents: above 40 km/h nobody is asked to open, above 50 km/h to secure. Never
 * a permission: `no-objection` and a null leave the usual caution standing (lee side first, never
 * both ends in gusts, latch the doors). Null for a null.
 * @param gust m/s
 * @throws RangeError outside 0..100 m/s
 */
export const windCaution = orUnknown(function windCaution(
  gust: number,
): 'secure' | 'do-not-open' | 'no-objection' {
  expectRange('wind gust', gust, 0, 100, 'm/s');
  if (gust * KMH > SECURE) return 'secure';
  return gust * KMH > NO_OPENING ? 'do-not-open' : 'no-objection';
});
