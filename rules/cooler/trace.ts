import { median } from '../statistics/index.ts';
import { type Instant, MINUTE } from '../units.ts';

/** Readings of one quantity as two columns, in order of time: `value[i]` was read at `t[i]`. */
export type Trace = { readonly t: readonly Instant[]; readonly value: readonly number[] };

/** A stretch of minutes of the farm's day or of time. */
export type Span = { readonly from: Instant; readonly to: Instant };

const SMOOTHED = 2.5; // minutes either side, common practice: a median of five minutes
const FEWEST = 3; // readings; with fewer there is nothing to take the middle of

/**
 * The readings from `from` up to `to`, each replaced by the middle of what was read within two and
 * a half minutes of it. A probe that reports each five minutes stays as it is.
 * Common practice, no source.
 */
export function smoothTrace({ t, value }: Trace, from: number, to: number): Trace {
  const times: Instant[] = [];
  const values: number[] = [];
  let low = firstNotBefore(t, from - SMOOTHED * MINUTE);
  let high = low;
  for (let i = firstNotBefore(t, from); i < t.length; i++) {
    const at = t[i] as Instant;
    if (at > to) break;
    while ((t[low] as number) < at - SMOOTHED * MINUTE) low += 1;
    if (high < i) high = i;
    while (high < t.length && (t[high] as number) <= Math.min(to, at + SMOOTHED * MINUTE))
      high += 1;
    times.push(at);
    values.push(high - low < FEWEST ? (value[i] as number) : median(value.slice(low, high)));
  }
  return { t: times, value: values };
}

/** Index of the first instant of a rising row that is not before `at`. */
export function firstNotBefore(t: readonly number[], at: number): number {
  let low = 0;
  let high = t.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((t[middle] as number) < at) low = middle + 1;
    else high = middle;
  }
  return low;
}
