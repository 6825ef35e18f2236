import type { AirRead } from '../../rules/wetness/index.ts';

/** First reading that is not before `t`. */
export function firstAt(air: readonly AirRead[], t: number): number {
  let [low, high] = [0, air.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((air[middle]?.t ?? t) < t) low = middle + 1;
    else high = middle;
  }
  return low;
}
