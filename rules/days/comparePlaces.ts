import { type PairedDifference, pairedDifference } from '../statistics/index.ts';
import { placeScore } from './bestPlace.ts';
import type { PlaceDay, PlaceHour } from './placeDay.ts';
import { KNOWN_ENOUGH } from './placeTally.ts';

/** Nineteen times of twenty, where the differences of one day and the next are as alike as found. */
export const CONFIDENCE = 0.95;

/** Hours a day that the other place has more of (fewer: below zero), each with its interval. */
export type PlaceDifference = {
  /** Days known enough in both. */
  readonly days: number;
  readonly leftOut: readonly string[];
  /** null: too few days, or days too much alike one another to be worth three. */
  readonly score: PairedDifference | null;
  readonly inBand: PairedDifference | null;
  readonly hot: PairedDifference | null;
  readonly cold: PairedDifference | null;
  readonly wet: PairedDifference | null;
  readonly hurt: PairedDifference | null;
  /** By the middle of least and most. */
  readonly disease: PairedDifference | null;
};

type Sums = Record<'inBand' | 'hot' | 'cold' | 'wet' | 'hurt', number>;
const sumsOf = (hours: readonly PlaceHour[]): Sums => {
  const sums: Sums = { inBand: 0, hot: 0, cold: 0, wet: 0, hurt: 0 };
  for (const hour of hours)
    for (const key of Object.keys(sums) as (keyof Sums)[]) sums[key] += hour[key];
  return sums;
};

const HOUR_KNOWN = 0.75; // of an hour; ours, as in diseaseDay
const knownHour = (hour: PlaceHour | undefined) => hour !== undefined && hour.known >= HOUR_KNOWN;

/**
 * Two places day by day, over the hours known in both, so that a probe that was silent on hot
 * afternoons does not make its place look cool. The score of a day is its hours in the band with
 * dry leaves, less one for each that was too hot and half for each wet one.
 *
 * Source: the paired t interval on what the days are worth, see pairedDifference; the score and
 * the 80 % of hours that both must know are ours, from no source.
 * @param here days of one place, in order of time
 * @param there days of the other, by the same names
 */
export function comparePlaces(
  here: readonly PlaceDay[],
  there: readonly PlaceDay[],
  confidence = CONFIDENCE,
): PlaceDifference {
  const others = new Map(there.map((day) => [day.day, day]));
  const leftOut: string[] = [];
  const apart: Record<keyof Sums | 'score', number[]> = {
    ...{ score: [], inBand: [], hot: [], cold: [], wet: [], hurt: [] },
  };
  const disease: number[] = [];
  for (const mine of here) {
    const other = others.get(mine.day);
    const both = mine.hours.flatMap((hour, i) => {
      const same = other?.hours[i];
      return same !== undefined && knownHour(hour) && knownHour(same) ? [[hour, same]] : [];
    }) as [PlaceHour, PlaceHour][];
    if (both.length === 0 || both.length < KNOWN_ENOUGH * mine.hours.length) {
      leftOut.push(mine.day);
      continue;
    }
    // As if the hours that one of them does not know had been like the others of that day.
    const whole = mine.hours.length / both.length;
    const a = sumsOf(both.map(([hour]) => hour));
    const b = sumsOf(both.map(([, hour]) => hour));
    for (const key of Object.keys(a) as (keyof Sums)[]) apart[key].push(whole * (b[key] - a[key]));
    apart.score.push(whole * (placeScore(b) - placeScore(a)));
    if (mine.disease !== null && other?.disease != null)
      disease.push(middle(other.disease.hours) - middle(mine.disease.hours));
  }
  const of = (differences: readonly number[]) => pairedDifference(differences, confidence);
  return {
    days: apart.score.length,
    leftOut,
    score: of(apart.score),
    inBand: of(apart.inBand),
    hot: of(apart.hot),
    cold: of(apart.cold),
    wet: of(apart.wet),
    hurt: of(apart.hurt),
    disease: of(disease),
  };
}

const middle = ([least, most]: readonly [number, number]) => (least + most) / 2;

/** Whether the other place did better or worse: only where the interval is clear of zero. */
export function saysOf({
  score,
}: PlaceDifference): 'better' | 'worse' | 'no-difference' | 'unknown' {
  if (score === null) return 'unknown';
  return score.low > 0 ? 'better' : score.high < 0 ? 'worse' : 'no-difference';
}
