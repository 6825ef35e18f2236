import { HOUR, type Instant, instant, MINUTE } from '../units.ts';
import { wetPieces } from './wetPieces.ts';
import { type AirRead, signsByDepression } from './wetSign.ts';

const MID_MORNING = 3 * HOUR; // after sunrise; common practice, no source

/**
 * Whether leaves were dry three hours after sunrise (dew-point depression above 2.4 K): the way to
 * judge an unheated house that is too cold for a target of vapour pressure deficit. null when
 * that is not known, or not yet.
 * @throws RangeError for readings not in order of time
 */
export function dryByMidMorning(
  readings: readonly AirRead[],
  sunrise: Instant,
  now: Instant,
  { maxGapMinutes = 30 }: { readonly maxGapMinutes?: number } = {},
): boolean | null {
  const due = sunrise + MID_MORNING;
  if (now < due) return null;
  const window = { from: sunrise, to: instant(due + MINUTE) };
  const state = wetPieces(signsByDepression(readings), window, { maxGapMinutes }).at(-1)?.state;
  if (state === undefined || state === 'unknown') return null;
  return state === 'dry';
}
