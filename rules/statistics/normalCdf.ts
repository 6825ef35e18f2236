import { orUnknown } from '../orUnknown.ts';
import { type Probability, probability } from '../units.ts';

const FAR = 5; // beyond this the series loses digits to cancellation; the fraction is exact there
const FRACTION_TERMS = 60; // ample for |z| > 5

/**
 * Chance that a standard normal value falls below `z`.
 *
 * Near the middle the series 1/2 + phi(z) (z + z^3/3 + z^5/(3*5) + ...), Abramowitz & Stegun
 * 26.2.11; far out the continued fraction of the tail, 26.2.14.
 */
export const normalCdf = orUnknown(function normalCdf(z: number): Probability {
  if (Number.isNaN(z)) throw new RangeError('Expected z from -Infinity to Infinity, got NaN');
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  if (Math.abs(z) > FAR) {
    const far = Math.abs(z);
    let fraction = far;
    for (let k = FRACTION_TERMS; k >= 1; k -= 1) fraction = far + k / fraction;
    const tail = density / fraction;
    return probability(z < 0 ? tail : 1 - tail);
  }
  let term = z;
  let sum = z;
  for (let odd = 3; Math.abs(term) > 1e-17; odd += 2) {
    term *= (z * z) / odd;
    sum += term;
  }
  return probability(0.5 + density * sum);
});
