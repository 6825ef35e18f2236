import type { RiskRange } from '../disease/index.ts';
import { expectRange } from '../expectRange.ts';
import { HOUR, instant } from '../units.ts';
import {
  type AirRead,
  type Bounds,
  cutTo,
  signsByHumidity,
  type WetRule,
  type Window,
  wetPieces,
} from '../wetness/index.ts';

/** What a crop asks of a place, and how leaves there are taken for wet. */
export type PlaceRule = {
  /** °C, from and to, both in it. */
  readonly band: readonly [number, number];
  /** Above it the crop is hurt, °C; null where none is told. */
  readonly heatLimit: number | null;
  /** Below it the crop is hurt, °C; null where none is told. */
  readonly chill: number | null;
  readonly wet: WetRule;
};

/** One hour of a place, all in hours (0..1). Hot, cold and in the band never overlap. */
export type PlaceHour = {
  /** That readings of temperature and humidity speak for. */
  readonly known: number;
  /** In the band, and leaves dry. */
  readonly inBand: number;
  readonly hot: number;
  readonly cold: number;
  /** Leaves wet, at any temperature. */
  readonly wet: number;
  /** In the band, but leaves wet. */
  readonly wetInBand: number;
  /** Above the heat limit or below the chill. */
  readonly hurt: number;
  /** Means of what is known, °C and %; null without any. */
  readonly temperature: number | null;
  readonly humidity: number | null;
  /** Whether vents stood open, as somebody said; null where nobody did. */
  readonly open: boolean | null;
};

/** What one calendar day in one place was to a crop. */
export type PlaceDay = {
  readonly day: string;
  readonly hours: readonly PlaceHour[];
  /** Coldest and hottest reading, °C; null without any. */
  readonly lowest: number | null;
  readonly highest: number | null;
  readonly disease: DiseaseHours | null;
};

/** Wet hours of a day on which the weather allowed infection by one of the crop's diseases. */
export type DiseaseHours = {
  readonly hours: Bounds;
  readonly risk: RiskRange;
  /** Ids of the diseases that it allowed, or may have. */
  readonly of: readonly string[];
};

/**
 * The hours of one day in one place: in a crop's band, too hot, too cold, wet, or not known. Time
 * without a reading of both temperature and humidity is known as nothing.
 *
 * Source: counted on the readings, by the wet rule of the place; that an hour in the band with wet
 * leaves is no good hour is ours.
 * @param air in order of time; readings from before the day tell whether leaves were wet at its start
 * @param isOpen whether vents stood open at a time, as somebody said
 * @throws RangeError for a band upside down, or readings not in order of time
 */
export function placeHours(
  air: readonly AirRead[],
  { band: [low, high], heatLimit, chill, wet }: PlaceRule,
  window: Window,
  isOpen: (t: number) => boolean | null = () => null,
): Pick<PlaceDay, 'hours' | 'lowest' | 'highest'> {
  expectRange('lower end of the band', low, -30, 60, '°C');
  expectRange('upper end of the band', high, low, 60, '°C');
  const read = air.filter(({ temperature, humidity }) => temperature !== null && humidity !== null);
  const settings = wet.maxGapMinutes === undefined ? {} : { maxGapMinutes: wet.maxGapMinutes };
  const pieces = wetPieces(signsByHumidity(read, wet), window, settings);
  const hours: PlaceHour[] = [];
  let [lowest, highest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  let [first, at] = [0, 0];
  for (let begins: number = window.from; begins < window.to; begins += HOUR) {
    const slot = { from: instant(begins), to: instant(Math.min(begins + HOUR, window.to)) };
    while (first < pieces.length && (pieces[first]?.to ?? 0) <= begins) first += 1;
    const sum = { known: 0, inBand: 0, hot: 0, cold: 0, wet: 0, wetInBand: 0, hurt: 0 };
    let warmth = 0;
    for (let i = first; i < pieces.length && (pieces[i]?.from ?? 0) < slot.to; i += 1) {
      const piece = pieces[i];
      if (piece === undefined || piece.state === 'unknown') continue;
      const [inside] = cutTo([piece], slot);
      if (inside === undefined) continue;
      const part = (inside.to - inside.from) / HOUR;
      // Where a short hole was bridged, between its edges: the middle of them.
      const middle = (piece.coldest + piece.warmest) / 2;
      const isWet = piece.state === 'wet';
      sum.known += part;
      warmth += middle * part;
      if (isWet) sum.wet += part;
      if (middle > high) sum.hot += part;
      else if (middle < low) sum.cold += part;
      else if (isWet) sum.wetInBand += part;
      else sum.inBand += part;
      if ((heatLimit !== null && middle > heatLimit) || (chill !== null && middle < chill))
        sum.hurt += part;
      lowest = Math.min(lowest, piece.coldest);
      highest = Math.max(highest, piece.warmest);
    }
    const damp: number[] = [];
    for (; at < read.length && (read[at]?.t ?? 0) < slot.to; at += 1)
      if ((read[at]?.t ?? 0) >= slot.from) damp.push(read[at]?.humidity ?? 0);
    hours.push({
      ...sum,
      temperature: sum.known === 0 ? null : warmth / sum.known,
      humidity: damp.length === 0 ? null : damp.reduce((all, rh) => all + rh, 0) / damp.length,
      open: isOpen(begins),
    });
  }
  const known = Number.isFinite(lowest);
  return { hours, lowest: known ? lowest : null, highest: known ? highest : null };
}
