import { expectRange } from '../expectRange.ts';
import { expectCount } from './expectCount.ts';
import { expectNumbers } from './expectNumbers.ts';
import { meanOf } from './meanOf.ts';
import { percentile } from './percentile.ts';
import { seeded } from './seeded.ts';

/** Below this a resample repeats too few points to say anything: show the points. Common practice. */
export const FEWEST_TO_RESAMPLE = 8;

export type BootstrapInterval = {
  readonly estimate: number;
  readonly low: number;
  readonly high: number;
  /** Kept with the result: the same seed gives the same interval again. */
  readonly seed: number;
};

/**
 * Interval of the mean of `a`, or with `b` of mean(a) - mean(b), by resampling each group with
 * replacement and taking percentiles. null when a group has fewer than 8 values.
 *
 * Source: the percentile interval of Efron 1979, Ann. Stat. 7:1 (from memory).
 * @throws RangeError for a value that is no number, confidence outside 0.5..0.9999, draws below 99
 */
export function bootstrapInterval(
  a: readonly number[],
  b: readonly number[] | null = null,
  { confidence = 0.95, draws = 9999, seed = 20_047 } = {},
): BootstrapInterval | null {
  expectNumbers('value', a);
  expectNumbers('value', b ?? []);
  expectRange('confidence', confidence, 0.5, 0.9999, '');
  expectCount('draws', draws, 99, 1_000_000);
  expectCount('seed', seed);
  if (a.length < FEWEST_TO_RESAMPLE || (b !== null && b.length < FEWEST_TO_RESAMPLE)) return null;

  const random = seeded(seed);
  const resampled = (values: readonly number[]) => {
    let sum = 0;
    for (let i = 0; i < values.length; i += 1) {
      sum += values[Math.floor(random() * values.length)] ?? 0;
    }
    return sum / values.length;
  };
  const drawn = new Array<number>(draws);
  for (let draw = 0; draw < draws; draw += 1) {
    drawn[draw] = resampled(a) - (b === null ? 0 : resampled(b));
  }
  const tail = (1 - confidence) / 2;
  return {
    estimate: meanOf(a) - (b === null ? 0 : meanOf(b)),
    low: percentile(drawn, tail),
    high: percentile(drawn, 1 - tail),
    seed,
  };
}
