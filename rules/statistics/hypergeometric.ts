import { lnGamma } from './lnGamma.ts';

/** Natural logarithm of the number of ways to choose k of n. */
export const lnChoose = (n: number, k: number) =>
  lnGamma(n + 1) - lnGamma(k + 1) - lnGamma(n - k + 1);

/**
 * Chances of every table with the margins of [a b; c d], by the count in its first cell: the
 * hypergeometric distribution. `low` is the least that cell can hold.
 */
export function tablesLike(a: number, b: number, c: number, d: number) {
  const row = a + b;
  const column = a + c;
  const other = c + d;
  const low = Math.max(0, column - other);
  const high = Math.min(row, column);
  const lnAll = lnChoose(row + other, column);
  const chances: number[] = [];
  for (let x = low; x <= high; x += 1) {
    chances.push(Math.exp(lnChoose(row, x) + lnChoose(other, column - x) - lnAll));
  }
  return { low, chances };
}
