import { orUnknown } from '../orUnknown.ts';
import { wilson } from './wilson.ts';

/**
 * Difference between two shares, first less second, and the interval it lies in: Wilson intervals
 * of both joined by squares. It keeps inside -1..1 and holds at 0 and all.
 *
 * Source: Newcombe 1998, Stat. Med. 17:873, method 10 (from memory).
 * @param confidence share of such intervals that hold the truth, 0.5..0.9999
 * @throws RangeError for an empty group (there is no interval), or successes not from 0 to n
 */
export const newcombeDifference = orUnknown(function newcombeDifference(
  successes1: number,
  n1: number,
  successes2: number,
  n2: number,
  confidence: number = 0.95,
): { readonly difference: number; readonly low: number; readonly high: number } {
  const [low1, high1] = wilson(successes1, n1, confidence);
  const [low2, high2] = wilson(successes2, n2, confidence);
  const share1 = successes1 / n1;
  const share2 = successes2 / n2;
  const difference = share1 - share2;
  return {
    difference,
    low: Math.max(-1, difference - Math.hypot(share1 - low1, high2 - share2)),
    high: Math.min(1, difference + Math.hypot(high1 - share1, share2 - low2)),
  };
});
