import { expectCount } from './expectCount.ts';
import { expectNumbers } from './expectNumbers.ts';
import { meanOf } from './meanOf.ts';

export type StraightLine = {
  readonly n: number;
  readonly slope: number;
  readonly intercept: number;
  /** Standard error of the slope; null with two points, which any line passes through. */
  readonly slopeError: number | null;
  /** Residual standard deviation, divisor n - 2; null with two points. */
  readonly residualSd: number | null;
  /** Share of the variation of y that the line explains, 0..1; 0 when y never changes. */
  readonly r2: number;
};

/**
 * Straight line by ordinary least squares; null when x never changes.
 * Source: Draper & Smith 1998, Applied Regression Analysis, ch. 1 (from memory).
 * @throws RangeError unless x and y are lists of numbers of the same length, from 2
 */
export function straightLine(x: readonly number[], y: readonly number[]): StraightLine | null {
  expectCount('points', x.length, 2);
  expectCount('length of the second list', y.length, x.length, x.length);
  expectNumbers('value', x);
  expectNumbers('value', y);
  const n = x.length;
  const meanX = meanOf(x);
  const meanY = meanOf(y);
  let xx = 0;
  let xy = 0;
  let yy = 0;
  x.forEach((value, index) => {
    const dx = value - meanX;
    const dy = (y[index] ?? 0) - meanY;
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
  });
  if (!(xx > 0)) return null;
  const slope = xy / xx;
  const residualSd = n === 2 ? null : Math.sqrt(Math.max(0, yy - slope * xy) / (n - 2));
  return {
    n,
    slope,
    intercept: meanY - slope * meanX,
    slopeError: residualSd === null ? null : residualSd / Math.sqrt(xx),
    residualSd,
    r2: yy === 0 ? 0 : (xy * xy) / (xx * yy),
  };
}
