import { orUnknown } from '../orUnknown.ts';
import { studentQuantile } from './studentQuantile.ts';

/**
 * The value that a standard normal variable stays below with chance `p`; inverts normalCdf.
 * @throws RangeError unless 0 < p < 1
 */
export const normalQuantile = orUnknown(function normalQuantile(p: number): number {
  return studentQuantile(p, Number.POSITIVE_INFINITY);
});
