import { expectRange } from '../expectRange.ts';
import { type DegreeDays, degreeDaysOf, HOUR, type Instant, MINUTE } from '../units.ts';
import type { Cutoff } from './dailyDegreeDays.ts';
import { degreeDays } from './degreeDays.ts';
import { degreeDaysSine } from './degreeDaysSine.ts';
import type { FilledReading } from './fillGaps.ts';
import { USUAL_MAX_GAP } from './temperatureReading.ts';
import { walkSegments } from './walkSegments.ts';

// When what was read no longer tells a day's warmth: common practice, no source.
const LONGEST_GAP = 6 * HOUR;
const DAWN = 2 * HOUR; // either side of sunrise, when the low falls
const AFTERNOON = [12 * HOUR, 16 * HOUR] as const; // since midnight, standard time: the high

/** A day's heat units, and how much of it was read, filled from another probe, guessed, unknown. */
export type DayHeat = {
  /** null when there was nothing to guess from. */
  readonly degreeDays: DegreeDays | null;
  readonly basis: 'read' | 'extremes' | 'normal' | 'unknown';
  /** Shares of the day, 0..1. */
  readonly filled: number;
  readonly guessed: number;
  readonly unknown: number;
  /** Of a guess, (°C d)²: to be added to that of a prediction. 0 for what was read. */
  readonly variance: number;
};

export type DayToCount = {
  /** Screened and filled; may reach outside the day, so that its ends are joined. */
  readonly readings: readonly FilledReading[];
  /** Midnight to midnight in the farm's standard time. */
  readonly from: Instant;
  readonly to: Instant;
  /** null where the sun does not rise. */
  readonly rise: Instant | null;
  readonly lower: number;
  readonly upper?: number | undefined;
  readonly cutoff?: Cutoff | undefined;
  /** Known in another way (a max-min thermometer, a station); `sd` is what such a guess is off by. */
  readonly extremes?: { readonly min: number; readonly max: number; readonly sd: number } | null;
  /** What this date brings in other years, °C d. */
  readonly normal?: { readonly degreeDays: number; readonly sd: number } | null;
};

/**
 * Heat units of one day with gaps in it. A gap of more than six hours, or one that hides all of
 * dawn (sunrise ± 2 h) or of 12 to 16 h, may hide an extreme: then the day is built from its
 * extremes, if known, by a single sine; else from the normal of its date; and it is a guess.
 * Shorter gaps that nobody filled stay unknown.
 * @throws RangeError for a day that ends before it begins, or what degreeDays refuses
 */
export function dayHeat(day: DayToCount): DayHeat {
  const { readings, from, to, lower, upper, cutoff, extremes = null, normal = null } = day;
  expectRange('end of the day', to, from + HOUR, from + 25 * HOUR, 'ms');
  if (!hidesAnExtreme(day)) {
    const { degreeDays: units, unknownHours } = degreeDays(readings, {
      lower,
      upper,
      cutoff,
      from,
      to,
    });
    let filled = 0;
    walkSegments(readings, USUAL_MAX_GAP, from, to, (length, _start, _end, left, right) => {
      if (left.filled || right.filled) filled += length;
    });
    const unknown = (unknownHours * HOUR) / (to - from);
    const shares = { filled: filled / (to - from), guessed: 0, unknown };
    return { degreeDays: units, basis: 'read', ...shares, variance: 0 };
  }
  const guess = { filled: 0, guessed: 1, unknown: 0 };
  if (extremes !== null) {
    const { min, max, sd } = extremes;
    expectRange('spread of a guessed day', sd, 0, 50, '°C d');
    const units = degreeDaysSine({ min, max, lower, upper, cutoff });
    return { degreeDays: units, basis: 'extremes', ...guess, variance: sd ** 2 };
  }
  if (normal !== null) {
    expectRange('normal units of the day', normal.degreeDays, 0, 60, '°C d');
    expectRange('spread of a guessed day', normal.sd, 0, 50, '°C d');
    const units = degreeDaysOf(normal.degreeDays);
    return { degreeDays: units, basis: 'normal', ...guess, variance: normal.sd ** 2 };
  }
  return { degreeDays: null, basis: 'unknown', filled: 0, guessed: 0, unknown: 1, variance: 0 };
}

function hidesAnExtreme({ readings, from, to, rise }: DayToCount): boolean {
  const windows: [number, number][] = [[from + AFTERNOON[0], from + AFTERNOON[1]]];
  if (rise !== null) windows.push([rise - DAWN, rise + DAWN]);
  const hides = (begins: number, ends: number) =>
    ends - begins > LONGEST_GAP ||
    windows.some(([opens, shuts]) => begins <= opens && ends >= shuts);

  let before = Number.NEGATIVE_INFINITY;
  for (const { t, value } of readings) {
    if (value === null) continue;
    const gap = t - before > USUAL_MAX_GAP * MINUTE;
    if (gap && t > from && before < to && hides(Math.max(before, from), Math.min(t, to))) {
      return true;
    }
    before = t;
  }
  return before < to && hides(Math.max(before, from), to);
}
