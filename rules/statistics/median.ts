import { percentile } from './percentile.ts';

/**
 * The middle value; of an even number, half-way between the two in the middle.
 * @throws RangeError for an empty list
 */
export const median = (values: readonly number[]): number => percentile(values, 0.5);
