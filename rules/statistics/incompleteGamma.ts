import { lnGamma } from './lnGamma.ts';

const ENOUGH = 1e-16; // relative change at which another term no longer matters
const MOST_TERMS = 10_000; // needed terms grow with the root of the shape
const NEARLY_ZERO = 1e-300; // keeps a vanishing denominator from ending the fraction

/**
 * Regularised upper incomplete gamma function Q(a, x), for a > 0 and x >= 0.
 *
 * Series DLMF 8.11.4 left of the mean, continued fraction DLMF 8.9.2 (modified Lentz) right of it:
 * each is fast only there.
 */
export function upperGamma(a: number, x: number): number {
  if (x <= 0) return 1;
  const front = Math.exp(a * Math.log(x) - x - lnGamma(a));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let k = 1; k <= MOST_TERMS && term > ENOUGH * sum; k += 1) {
      term *= x / (a + k);
      sum += term;
    }
    return 1 - front * sum;
  }
  let b = x + 1 - a;
  let c = 1 / NEARLY_ZERO;
  let d = 1 / b;
  let fraction = d;
  for (let k = 1; k <= MOST_TERMS; k += 1) {
    const up = k * (a - k);
    b += 2;
    d = 1 / away(b + up * d);
    c = away(b + up / c);
    const change = c * d;
    fraction *= change;
    if (Math.abs(change - 1) < ENOUGH) break;
  }
  return front * fraction;
}

const away = (value: number) => (Math.abs(value) < NEARLY_ZERO ? NEARLY_ZERO : value);
