import { HOUR } from '../units.ts';
import { walkPieces } from './walkPieces.ts';
import type { WetPiece, Window } from './wetPieces.ts';
import type { SignReading } from './wetSign.ts';

/** The least and the most a number can be, given what is not known. */
export type Bounds = readonly [least: number, most: number];

/** Least and most wet hours in these pieces: known wet, and known wet with unknown. */
export function wetHoursBounds(pieces: readonly WetPiece[]): Bounds {
  let least = 0;
  let most = 0;
  for (const { state, from, to } of pieces) {
    if (state === 'dry') continue;
    most += to - from;
    if (state === 'wet') least += to - from;
  }
  return [least / HOUR, most / HOUR];
}

/** These pieces cut to a window. */
export function cutTo(pieces: readonly WetPiece[], { from, to }: Window): WetPiece[] {
  const inside: WetPiece[] = [];
  for (const piece of pieces) {
    const begins = piece.from > from ? piece.from : from;
    const ends = piece.to < to ? piece.to : to;
    if (!(ends > begins)) continue;
    const whole = begins === piece.from && ends === piece.to;
    inside.push(whole ? piece : { ...piece, from: begins, to: ends });
  }
  return inside;
}

/**
 * Least and most hours of a window during which a reading's own test held, by the same handling of
 * gaps as wet time.
 * @param test null: this reading does not say
 * @throws RangeError as wetPieces
 */
export function hoursWhen<Reading extends Pick<SignReading, 't' | 'temperature'>>(
  readings: readonly Reading[],
  test: (reading: Reading) => boolean | null,
  window: Window,
  settings: { readonly maxGapMinutes?: number } = {},
): Bounds {
  let least = 0;
  let most = 0;
  const signOf = (reading: Reading) => {
    const held = test(reading);
    return held === null ? null : held ? 'wet' : 'dry';
  };
  walkPieces(readings, signOf, window, settings, (state, from, to) => {
    if (state === 'dry') return;
    most += to - from;
    if (state === 'wet') least += to - from;
  });
  return [least / HOUR, most / HOUR];
}
