import { expectRange } from '../expectRange.ts';
import { studentCdf } from '../statistics/index.ts';
import { type Probability, probability } from '../units.ts';
import { conditionalOdds } from './conditionalOdds.ts';
import { type FrostDateCurve, firstFrostFit, frostDateCurve } from './frostDateQuantile.ts';
import { frostShare, type SeasonFrost } from './frostDates.ts';
import { siteFromStation } from './siteFromStation.ts';

// Common practice, no source.
const ENOUGH_FOR_A_CURVE = 15; // seasons with a frost
const ENOUGH_TO_COUNT = 8; // seasons with a known answer
const WHOLE_DAYS = Math.sqrt(1 / 12); // d; the spread that rounding to days makes by itself
/** No finite record makes a frost certain or impossible. Ours, from no source. */
const LEAST = 1e-4;

/** What past seasons tell of one frost, the first or the last, at one limit. */
export type FrostHistory = {
  readonly way: 'curve' | 'counted' | 'unknown';
  /** Season days of past frosts, in order. */
  readonly dates: readonly number[];
  /** Seasons with a known answer, those without such a frost among them. */
  readonly known: number;
  /** Share of seasons that have such a frost; 1 when all did. */
  readonly share: number;
  readonly curve: FrostDateCurve | null;
};

/**
 * Past seasons made ready for odds. 15 seasons with a frost or more: a t distribution with one new
 * season in mind; 8 seasons with a known answer or more: counting; fewer: unknown. `offsets` are
 * own dates less those of the station the seasons are from, of three seasons or more: then dates
 * move by their mean, and their spread widens the curve.
 *
 * Source: Snyder & de Melo-Abreu 2005, FAO Env. & Nat. Res. Series 10, vol. 2, ch. 1; the least
 * numbers of seasons are common practice, no source.
 * @throws RangeError for dates outside 0..366
 */
export function frostHistory(
  seasons: readonly SeasonFrost[],
  offsets: readonly number[] = [],
): FrostHistory {
  const known = seasons.filter(({ frost }) => frost !== null);
  const found = known.flatMap(({ day }) => (day === null ? [] : [day]));
  const site =
    offsets.length < 3 ? 0 : offsets.reduce((sum, each) => sum + each, 0) / offsets.length;
  const dates = found.map((day) => Math.min(366, Math.max(0, day + site))).sort((a, b) => a - b);
  // A season without one tells of the share; where every season had one there is nothing to share.
  const share = known.length === found.length ? 1 : (frostShare(known) ?? 1);
  const fit = firstFrostFit(found);
  const wide = fit && { ...fit, sd: Math.max(fit.sd, WHOLE_DAYS) };
  if (wide !== null && found.length >= ENOUGH_FOR_A_CURVE) {
    const curve = siteFromStation(wide, offsets) ?? frostDateCurve(wide);
    return { way: 'curve', dates, known: known.length, share, curve };
  }
  const way = known.length >= ENOUGH_TO_COUNT ? 'counted' : 'unknown';
  return { way, dates, known: known.length, share, curve: null };
}

const held = (p: number): Probability => probability(Math.min(1 - LEAST, Math.max(LEAST, p)));
const upTo = (dates: readonly number[], day: number) => dates.filter((date) => date <= day).length;
/** Chance of no frost until `day` in a season that has one; seen from above, so the end keeps its digits. */
const spared = ({ mean, sd, df }: FrostDateCurve, day: number) => studentCdf((mean - day) / sd, df);

/**
 * Chance that the frost of a season has come by `day`. null with too few seasons. Never certain,
 * either way.
 * @throws RangeError for a day outside -366..732
 */
export function frostCameBy(history: FrostHistory, day: number): Probability | null {
  expectRange('season day', day, -366, 732, '');
  const { way, dates, known, share, curve } = history;
  if (curve !== null) return held(share * (1 - spared(curve, day)));
  return way === 'counted' ? held((upTo(dates, day) + 0.5) / (known + 1)) : null;
}

/** Chance that a season's frost, its last one say, comes after `day`. null with too few seasons. */
export function frostComesAfter(history: FrostHistory, day: number): Probability | null {
  expectRange('season day', day, -366, 732, '');
  const { way, dates, known, share, curve } = history;
  if (curve !== null) return held(share * spared(curve, day));
  const after = dates.length - upTo(dates, day);
  return way === 'counted' ? held((after + 0.5) / (known + 1)) : null;
}

/**
 * Chance that the frost comes in the `days` after `day`, given that none has come so far. null with
 * too few seasons, or when every season counted had frozen by then.
 * @throws RangeError for a day outside -366..366, or days outside 0..366
 */
export function frostWithin(history: FrostHistory, day: number, days: number): Probability | null {
  expectRange('season day', day, -366, 366, '');
  expectRange('days ahead', days, 0, 366, '');
  const { way, share, curve } = history;
  if (curve === null) return way === 'counted' ? countedWithin(history, day, days) : null;
  return held(
    conditionalOdds({ now: spared(curve, day), later: spared(curve, day + days), share }),
  );
}

/**
 * The same by plain counting: (k + 1/2) of (m + 1) seasons that were still to freeze. null when none
 * was, or with fewer than eight seasons.
 */
export function countedWithin(
  { dates, known }: Pick<FrostHistory, 'dates' | 'known'>,
  day: number,
  days: number,
): Probability | null {
  const come = upTo(dates, day);
  const open = known - come;
  if (known < ENOUGH_TO_COUNT || open <= 0) return null;
  return held((upTo(dates, day + days) - come + 0.5) / (open + 1));
}
