import { expectRange } from '../expectRange.ts';
import { HOUR, instant, MINUTE } from '../units.ts';
import {
  type AirRead,
  cutTo,
  signsByHumidity,
  type WetPiece,
  type WetRule,
  type Window,
  wetPieces,
} from '../wetness/index.ts';

const USUAL_CEILING = 85; // % of humidity above which an hour is not in band; ours
const HOUR_KNOWN = 45 * MINUTE; // ours, as in diseaseDay
const COVERED = 0.8; // share of hours known in every place; ours
const DAYS = 5; // ours

export type Band = {
  /** °C, from and to, both in it. */
  readonly band: readonly [number, number];
  readonly humidityCeiling?: number;
  readonly wet: WetRule;
};

/** What one place offered a crop, hours a day over time known in all places. */
export type BandTally = {
  readonly place: string;
  readonly inBand: number;
  /** Above the band. */
  readonly hot: number;
  /** Below the band. */
  readonly cold: number;
  readonly wet: number;
  /** Coldest and hottest reading of those hours, °C. */
  readonly lowest: number;
  readonly highest: number;
};

/**
 * Hours in a crop's band in several places, over the same known hours, so that a probe that was
 * silent on hot days does not make its place look cool. null unless 80 % of the hours are known in
 * every place and the window is 5 days or more.
 * @throws RangeError for a band upside down, or readings not in order of time
 */
export function hoursInBand(
  places: readonly { readonly place: string; readonly air: readonly AirRead[] }[],
  { band: [low, high], humidityCeiling = USUAL_CEILING, wet }: Band,
  window: Window,
): readonly BandTally[] | null {
  expectRange('lower end of the band', low, -30, 60, '°C');
  expectRange('upper end of the band', high, low, 60, '°C');
  expectRange('humidity ceiling', humidityCeiling, 1, 100, '%');
  const slots = Math.floor((window.to - window.from) / HOUR);
  if (slots < DAYS * 24 || places.length === 0) return null;
  const settings = wet.maxGapMinutes === undefined ? {} : { maxGapMinutes: wet.maxGapMinutes };
  const seen = places.map(({ place, air }) => {
    const known = air.filter(
      ({ temperature, humidity }) => temperature !== null && humidity !== null,
    );
    const ceiling = { at: humidityCeiling, below: humidityCeiling };
    return {
      place,
      leaves: byHour(wetPieces(signsByHumidity(known, wet), window, settings), window, slots),
      damp: byHour(wetPieces(signsByHumidity(known, ceiling), window, settings), window, slots),
    };
  });
  const joint = Array.from({ length: slots }, (_, slot) => slot).filter((slot) =>
    seen.every(({ leaves, damp }) => covers(leaves[slot]) && covers(damp[slot])),
  );
  if (joint.length < COVERED * slots) return null;
  const days = joint.length / 24;
  return seen.map(({ place, leaves, damp }) => {
    const air = joint.flatMap((slot) => (damp[slot] ?? []).filter(isKnown));
    const wetTime = joint.flatMap((slot) => leaves[slot] ?? []);
    const perDay = (pieces: readonly WetPiece[], when: (piece: WetPiece) => boolean) =>
      pieces.reduce((sum, p) => sum + (when(p) ? p.to - p.from : 0), 0) / HOUR / days;
    return {
      place,
      inBand: perDay(air, (p) => p.coldest >= low && p.warmest <= high && p.state === 'dry'),
      hot: perDay(air, (p) => p.warmest > high),
      cold: perDay(air, (p) => p.coldest < low),
      wet: perDay(wetTime, (p) => p.state === 'wet'),
      lowest: air.reduce((least, p) => Math.min(least, p.coldest), Number.POSITIVE_INFINITY),
      highest: air.reduce((most, p) => Math.max(most, p.warmest), Number.NEGATIVE_INFINITY),
    };
  });
}

const isKnown = ({ state }: WetPiece) => state !== 'unknown';

const covers = (pieces: readonly WetPiece[] | undefined) =>
  (pieces ?? []).filter(isKnown).reduce((sum, { from, to }) => sum + to - from, 0) >= HOUR_KNOWN;

function byHour(pieces: readonly WetPiece[], window: Window, slots: number): WetPiece[][] {
  const hours: WetPiece[][] = Array.from({ length: slots }, () => []);
  for (const piece of pieces) {
    const last = Math.min(slots - 1, Math.ceil((piece.to - window.from) / HOUR) - 1);
    for (let slot = Math.floor((piece.from - window.from) / HOUR); slot <= last; slot += 1) {
      const from = instant(window.from + slot * HOUR);
      hours[slot]?.push(...cutTo([piece], { from, to: instant(from + HOUR) }));
    }
  }
  return hours;
}
