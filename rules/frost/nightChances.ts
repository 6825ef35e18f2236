import { expectRange } from '../expectRange.ts';
import { dayNumber } from '../heat/index.ts';
import { type FrostHistory, frostWithin } from './frostHistory.ts';
import type { NightLowOf } from './siteFrost.ts';

const FEWEST_YEARS = 8; // common practice, no source: as for counting dates
const BLUR = 3.5; // nights either side: some thirty years tell a date no better. Ours

/**
 * Chance of each coming night that the season's first frost comes then, none having come before:
 * the curve, or the counts, of frostHistory taken night by night. null with too few seasons.
 * @param day season day of today; the first night is the one that ends tomorrow
 */
export function firstFrostNights(
  history: FrostHistory,
  day: number,
  nights: number,
): readonly number[] | null {
  expectRange('nights', nights, 0, 366, '');
  const chances: number[] = [];
  let spared = 1;
  for (let ahead = 1; ahead <= nights; ahead += 1) {
    const by = frostWithin(history, day, ahead);
    if (by === null) return null;
    const left = 1 - by;
    chances.push(Math.max(0, 1 - left / spared));
    spared = left;
  }
  return chances;
}

/**
 * The same at any time of year, by counting: in how many past years the next low at or below the
 * limit came by each coming night, from the same date on. Each year's night is spread over the week
 * round it. (k + ½ j/N) of (n + 1) years by night j of N: the half year that may always be said
 * grows with the time ahead. null with fewer than eight
 * years whose nights are all but whole.
 * @param lows past nights in any order; today's date is `day`, `2025-10-15`
 */
export function nextFrostNights(
  lows: readonly NightLowOf[],
  limit: number,
  day: string,
  nights: number,
): readonly number[] | null {
  expectRange('nights', nights, 1, 300, '');
  const today = dayNumber(day);
  const byNight = new Map(lows.map(({ night, low }) => [dayNumber(night), low]));
  const years = new Set(lows.map(({ night }) => Number(night.slice(0, 4))));
  const firsts: number[] = [];
  for (const year of years) {
    const from = dayNumber(sameDate(day, year));
    if (from >= today - 1) continue;
    let missing = 0;
    let first = Number.POSITIVE_INFINITY;
    for (let ahead = 1; ahead <= nights; ahead += 1) {
      const low = byNight.get(from + ahead) ?? null;
      if (low === null) missing += 1;
      else if (low <= limit) first = Math.min(first, ahead);
    }
    // As for dates of frost, a sixth of the nights at most may be unknown. Ours.
    if (missing <= nights / 6) firsts.push(first);
  }
  if (firsts.length < FEWEST_YEARS) return null;
  let spared = 1;
  return Array.from({ length: nights }, (_, index) => {
    const ahead = index + 1;
    const come = firsts.reduce((sum, first) => sum + comeBy(first, ahead), 0);
    const left = 1 - (come + (0.5 * ahead) / nights) / (firsts.length + 1);
    const chance = 1 - left / spared;
    spared = left;
    return chance;
  });
}

/** That date in another year; 29 February becomes the 28th. */
function sameDate(day: string, year: number): string {
  const date = day.slice(5) === '02-29' ? '02-28' : day.slice(5);
  return `${String(year).padStart(4, '0')}-${date}`;
}

/** Share of a night, spread over the week round it and not before tomorrow, that is over by `ahead`. */
function comeBy(first: number, ahead: number): number {
  if (!Number.isFinite(first)) return 0;
  const by = (night: number) => Math.min(1, Math.max(0, (night - first + BLUR) / (2 * BLUR)));
  return (by(ahead) - by(0)) / (1 - by(0));
}
