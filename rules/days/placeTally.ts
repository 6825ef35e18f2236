import { meanOf } from '../statistics/index.ts';
import type { Bounds } from '../wetness/index.ts';
import type { DiseaseHours, PlaceDay, PlaceHour } from './placeDay.ts';

/** Share of a day's hours that must be known for it to count. Ours, as in hoursInBand. */
export const KNOWN_ENOUGH = 0.8;

const HAIR = 1e-6; // h: room for the last bits of a sum

/** Hours a day, over the days that are known enough; [least, most] where hours are not known. */
export type PlaceTally = {
  readonly days: number;
  /** Names of the days of which too little is known. */
  readonly leftOut: readonly string[];
  readonly inBand: Bounds;
  readonly hot: Bounds;
  readonly cold: Bounds;
  readonly wet: Bounds;
  readonly wetInBand: Bounds;
  readonly hurt: Bounds;
  readonly unknown: number;
  /** null for a crop without diseases in the farm file, or where no day has any judgement. */
  readonly disease: Bounds | null;
  /** Days the weather surely suited one of the crop's diseases, and days it may have. */
  readonly diseaseDays: Bounds | null;
  /** Coldest and hottest reading of all days, those left out too, °C. */
  readonly lowest: number | null;
  readonly highest: number | null;
};

const knownOf = ({ hours }: PlaceDay) => hours.reduce((sum, { known }) => sum + known, 0);

export const enoughKnown = (day: PlaceDay) =>
  day.hours.length > 0 && knownOf(day) >= KNOWN_ENOUGH * day.hours.length;

/**
 * What a place gave a crop a day, on average over some days. Hours that nobody knows may have been
 * anything: they widen every count. A day with less than 80 % known is left out, and named.
 *
 * Source: counted; the 80 % are ours, from no source.
 * @returns null when no day is known enough
 */
export function placeTally(days: readonly PlaceDay[]): PlaceTally | null {
  const counted = days.filter(enoughKnown);
  if (counted.length === 0) return null;
  const rest = meanOf(counted.map((day) => day.hours.length - knownOf(day)));
  const unknown = rest < HAIR ? 0 : rest;
  const bounds = (of: (hour: PlaceHour) => number): Bounds => {
    const least = meanOf(counted.map(({ hours }) => hours.reduce((sum, h) => sum + of(h), 0)));
    return [least, least + unknown];
  };
  const ill = counted.flatMap(({ disease }) => (disease === null ? [] : [disease]));
  const read = (of: (day: PlaceDay) => number | null) =>
    days.flatMap((day) => {
      const value = of(day);
      return value === null ? [] : [value];
    });
  const lows = read(({ lowest }) => lowest);
  const highs = read(({ highest }) => highest);
  return {
    days: counted.length,
    leftOut: days.filter((day) => !enoughKnown(day)).map(({ day }) => day),
    inBand: bounds(({ inBand }) => inBand),
    hot: bounds(({ hot }) => hot),
    cold: bounds(({ cold }) => cold),
    wet: bounds(({ wet }) => wet),
    wetInBand: bounds(({ wetInBand }) => wetInBand),
    hurt: bounds(({ hurt }) => hurt),
    unknown,
    disease:
      ill.length === 0
        ? null
        : [meanOf(ill.map(({ hours }) => hours[0])), meanOf(ill.map(({ hours }) => hours[1]))],
    diseaseDays: ill.length === 0 ? null : [ill.filter(surely).length, ill.filter(perhaps).length],
    lowest: lows.length === 0 ? null : Math.min(...lows),
    highest: highs.length === 0 ? null : Math.max(...highs),
  };
}

const surely = ({ risk }: DiseaseHours) => risk !== 'unknown' && risk.least !== 'quiet';
const perhaps = ({ risk }: DiseaseHours) => risk === 'unknown' || risk.most !== 'quiet';
