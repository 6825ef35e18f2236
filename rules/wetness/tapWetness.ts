import { knownHumidity } from '../air/index.ts';
import { HOUR, type Instant, instant, MINUTE } from '../units.ts';
import type { WetPiece, Window } from './wetPieces.ts';
import type { AirRead } from './wetSign.ts';

/** What the grower tapped: rain from when to when, or the time of a watering from above. */
export type WetTap =
  | { readonly kind: 'rain'; readonly from: Instant; readonly to: Instant }
  | { readonly kind: 'watering'; readonly at: Instant };

/** Wet from `from`, surely until `least`, possibly until `most`. */
export type TapStretch = {
  readonly from: Instant;
  readonly least: Instant;
  readonly most: Instant;
};

// All ours, from no source.
const DRYING_AIR = 87; // %; leaves dry under it
const AFTER_RAIN = 2 * HOUR; // of drying air by daylight
const AFTER_WATERING = 2 * HOUR; // wet at least
const HELD = HOUR; // of drying air after a watering
const VALID = 30 * MINUTE;

/**
 * Wetness that humidity does not show: fruit soaked while the air is at 80 %. After rain leaves
 * stay wet until the air has been under 87 % for 2 h of daylight without a break; after watering
 * for 2 h, or until under 87 % for 1 h, whichever is later. While readings are missing nobody
 * can say it dried: `least` takes the gap for drying air, `most` for damp.
 * @param readings outdoor or house air, in order of time
 * @param daylight stretches from sunrise to sunset
 * @param until where time ends for now; nothing reaches further
 */
export function tapWetness(
  tap: WetTap,
  readings: readonly AirRead[],
  daylight: readonly Window[],
  until: Instant,
): TapStretch {
  if (tap.kind === 'rain') {
    if (!(tap.to >= tap.from)) {
      throw new RangeError(`Expected rain to end from ${tap.from} onwards, got ${tap.to}`);
    }
    const dried = (gapDries: boolean) =>
      daylight.reduce((found: number, light) => {
        const begins = Math.max(light.from, tap.to);
        return Math.min(found, driedBy(readings, begins, light.to, AFTER_RAIN, gapDries));
      }, Number.POSITIVE_INFINITY);
    return stretch(tap.from, tap.to, dried(true), dried(false), until);
  }
  const dried = (gapDries: boolean) => driedBy(readings, tap.at, until, HELD, gapDries);
  const shortest = tap.at + AFTER_WATERING;
  return stretch(tap.at, shortest, dried(true), dried(false), until);
}

function stretch(from: Instant, shortest: number, least: number, most: number, until: Instant) {
  const upTo = (t: number) => instant(Math.max(from, Math.min(until, Math.max(shortest, t))));
  return { from, least: upTo(least), most: upTo(most) };
}

/** When a run of drying air inside [from, to] first lasts `needed`; Infinity when none does. */
function driedBy(
  readings: readonly AirRead[],
  from: number,
  to: number,
  needed: number,
  gapDries: boolean,
): number {
  let run = 0;
  let at = from;
  const pass = (dries: boolean, until: number) => {
    const ends = Math.min(until, to);
    if (ends <= at) return false;
    run = dries ? run + ends - at : 0;
    at = ends;
    return run >= needed;
  };
  let drying: boolean | null = null;
  let since = Number.NEGATIVE_INFINITY;
  for (const { t, humidity } of readings) {
    const known = knownHumidity(humidity);
    if (known === null) continue;
    const speaks = Math.min(since + VALID, t);
    if (drying !== null && pass(drying, speaks)) return at - (run - needed);
    if (pass(gapDries, t)) return at - (run - needed);
    drying = known < DRYING_AIR;
    since = t;
  }
  if (drying !== null && pass(drying, since + VALID)) return at - (run - needed);
  return pass(gapDries, to) ? at - (run - needed) : Number.POSITIVE_INFINITY;
}

/** The pieces with what was tapped laid over them: surely wet, then perhaps. */
export function layTap(pieces: readonly WetPiece[], tap: TapStretch): WetPiece[] {
  return pieces.flatMap((piece) => {
    const cut = (from: number, to: number, state: WetPiece['state']): WetPiece[] => {
      const begins = Math.max(piece.from, from);
      const ends = Math.min(piece.to, to);
      return ends > begins ? [{ ...piece, state, from: instant(begins), to: instant(ends) }] : [];
    };
    const perhaps = piece.state === 'wet' ? 'wet' : 'unknown';
    return [
      ...cut(Number.NEGATIVE_INFINITY, tap.from, piece.state),
      ...cut(tap.from, tap.least, 'wet'),
      ...cut(tap.least, tap.most, perhaps),
      ...cut(tap.most, Number.POSITIVE_INFINITY, piece.state),
    ];
  });
}
