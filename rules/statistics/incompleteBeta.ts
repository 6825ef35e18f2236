import { lnGamma } from './lnGamma.ts';

const ENOUGH = 1e-15; // relative change at which another term no longer matters
const MOST_TERMS = 5000; // needed terms grow with the root of the larger parameter
const NEARLY_ZERO = 1e-300; // keeps a vanishing denominator from ending the fraction

/**
 * Regularised incomplete beta function I_x(a, b), for 0 <= x <= 1 and a, b > 0.
 *
 * Continued fraction DLMF 8.17.22, evaluated from the front (modified Lentz). It converges fast
 * only left of the mean, so the other side is taken by symmetry, DLMF 8.17.4.
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);

  const lnFront =
    lnGamma(a + b) - lnGamma(a) - lnGamma(b) + a * Math.log(x) + b * Math.log1p(-x) - Math.log(a);

  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  for (let m = 1; m <= MOST_TERMS; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / away(1 + even * d);
    c = away(1 + even / c);
    fraction *= d * c;

    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + odd * d);
    c = away(1 + odd / c);
    const change = d * c;
    fraction *= change;
    if (Math.abs(change - 1) < ENOUGH) break;
  }
  return Math.exp(lnFront) * fraction;
}

const away = (value: number) => (Math.abs(value) < NEARLY_ZERO ? NEARLY_ZERO : value);
