import { HOUR } from '../units.ts';
import { type WetPiece, type Window, wetPieces } from './wetPieces.ts';
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
  return pieces.flatMap((piece) => {
    const begins = piece.from > from ? piece.from : from;
    const ends = piece.to < to ? piece.to : to;
    return ends > begins ? [{ ...piece, from: begins, to: ends }] : [];
  });
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
  const signs = readings.map((reading): SignReading => {
    const held = test(reading);
    const { t, temperature } = reading;
    return { t, temperature, sign: held === null ? null : held ? 'wet' : 'dry' };
  });
  return wetHoursBounds(wetPieces(signs, window, settings));
}
