import type { MaybeTemperature } from '../heat/index.ts';
import { meanOf, median } from '../statistics/index.ts';
import { type Hours, hours, MINUTE } from '../units.ts';
import { fitLag, STRAIGHT_ENOUGH } from './fitTimeConstant.ts';

// What a stretch must be like to be learned from. Common practice, no source.
const SETTLING = 10; // minutes left out at the start, while the air still mixes
const LEAST_MINUTES = 30;
const LEAST_CHANGE = 2; // K
const STEADY = 2; // K that outside may move
const FEWEST = 3; // readings; a line through two says nothing of its straightness
const LAST_FITS = 5;

export type OffPeriodFit = {
  /** null when refused. */
  readonly tauHours: Hours | null;
  /** Standard error of tau. */
  readonly seHours: Hours | null;
  readonly r2: number | null;
  /** Why it may not be used; empty when it may. */
  readonly refused: readonly (
    | 'too-short'
    | 'too-few-readings'
    | 'too-little-change'
    | 'outside-not-known'
    | 'outside-moved'
    | 'not-below-outside'
    | 'not-straight'
  )[];
};

/**
 * The room's time constant from one stretch with the compressor known to be off and the door shut,
 * or why that stretch is refused: under 30 minutes, under 2 K of change, outside moving by more
 * than 2 K, or r2 under 0.98. The first 10 minutes are left out. Nulls are not known, and left out.
 *
 * The acceptance limits are common practice, no source; the fit is fitTimeConstant's.
 * @throws RangeError for a value that is no temperature
 */
export function offPeriodFit(
  readings: readonly MaybeTemperature[],
  outside: readonly MaybeTemperature[],
): OffPeriodFit {
  const start = readings[0]?.t ?? 0;
  const end = readings.at(-1)?.t ?? start;
  const used = readings.flatMap(({ t, value }) =>
    value === null || t < start + SETTLING * MINUTE ? [] : [{ t, value }],
  );
  const out = outside.flatMap(({ t, value }) =>
    value === null || t < start || t > end ? [] : [value],
  );
  const mean = out.length === 0 ? null : meanOf(out);
  const refused: OffPeriodFit['refused'][number][] = [];
  if (end - start < LEAST_MINUTES * MINUTE) refused.push('too-short');
  if (used.length < FEWEST) refused.push('too-few-readings');
  if ((used.at(-1)?.value ?? 0) - (used[0]?.value ?? 0) < LEAST_CHANGE) {
    refused.push('too-little-change');
  }
  if (mean === null) refused.push('outside-not-known');
  else {
    if (Math.max(...out) - Math.min(...out) > STEADY) refused.push('outside-moved');
    if (used.some(({ value }) => value >= mean)) refused.push('not-below-outside');
  }
  if (refused.length > 0 || mean === null) {
    return { tauHours: null, seHours: null, r2: null, refused };
  }
  const { tauHours, seHours, r2 } = fitLag(used, (value) => mean - value);
  if (r2 < STRAIGHT_ENOUGH) return { tauHours: null, seHours: null, r2, refused: ['not-straight'] };
  return { tauHours, seHours, r2, refused };
}

/** The constant to go by: the median of the last five accepted fits; null, not known, for none. */
export const usualTimeConstant = (fits: readonly number[]): Hours | null =>
  fits.length === 0 ? null : hours(median(fits.slice(-LAST_FITS)));
