import { type Celsius, type Instant, instant } from '../units.ts';
import { walkPieces } from './walkPieces.ts';
import type { WetState } from './walkWetness.ts';
import type { SignReading } from './wetSign.ts';

/** A piece of time, wet, dry or unknown, and between which temperatures it was. */
export type WetPiece = {
  readonly state: WetState;
  readonly from: Instant;
  readonly to: Instant;
  /** The same as `warmest` where it was read. */
  readonly coldest: Celsius;
  readonly warmest: Celsius;
};

/** A stretch of time, from when to when. */
export type Window = { readonly from: Instant; readonly to: Instant };

/**
 * Cuts a window of time into wet, dry and unknown pieces that join without holes, so that wet time
 * can be given as least and most. A gap is never dry.
 *
 * A reading speaks until the next one, if that is at most `maxGapMinutes` away; before a longer gap
 * it speaks for its usual step, and half of `maxGapMinutes` at the most. What is left of the gap
 * is unknown, except that up to 2 h of it with one state at both edges keep that state. Within the
 * two levels leaves stay as they were, but only where it is known how they were: with nothing
 * before, or after a longer gap, they are unknown. The piece before a late reading is not given
 * its state: that would let a gap hide wet time.
 * @param readings in order of time; those from before and after the window help at its ends
 * @throws RangeError for readings not in order of time, or a window that ends before it begins
 */
export function wetPieces(
  readings: readonly SignReading[],
  window: Window,
  settings: { readonly maxGapMinutes?: number } = {},
): WetPiece[] {
  const pieces: WetPiece[] = [];
  walkPieces(readings, signOf, window, settings, (state, from, to, coldest, warmest) => {
    pieces.push({ state, from: instant(from), to: instant(to), coldest, warmest });
  });
  return pieces;
}

const signOf = ({ sign }: SignReading) => sign;
