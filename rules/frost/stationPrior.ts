import { expectRange } from '../expectRange.ts';
import { expectNumbers, meanOf } from '../statistics/index.ts';
import { type Celsius, celsius } from '../units.ts';

const FEWEST = 60; // nights of a station around a date: three weeks of three years. Ours
const FEWEST_SHARED = 9; // nights that both have, as for the gain of a cover; ours
/** How far a spot may lie from a station nobody compared it with, K. Ours: hollows differ by as much. */
const SHIFT_UNKNOWN = 3;

/** What a station's past nights around a date say of one night at a spot. */
export type StationPrior = {
  readonly mean: Celsius;
  /** Of one night: how such nights differ, and how surely the shift is known, K. */
  readonly sd: number;
  readonly df: number;
  readonly nights: number;
};

/**
 * A first guess of one night's low from a station's nights around the same date in past years: their
 * mean, shifted by the mean difference of nights that both have; s √(1 + 1/n), widened by how
 * surely that shift is known. null with too few nights.
 *
 * The differences come from clear, calm nights, on which a spot lies furthest below a station, so
 * it is a guess for such a night: on the cautious side.
 * Source: predictive spread of one more value (textbook); that variances add; the rest is ours.
 * @param lows °C, of nights around the date
 * @param differences own low less the station's on nights that both have, K
 * @throws RangeError for anything that is no number, or lows outside -60..60 °C
 */
export function stationPrior(
  lows: readonly number[],
  differences: readonly number[],
): StationPrior | null {
  for (const low of lows) expectRange('low of a night', low, -60, 60, '°C');
  expectNumbers('difference', differences);
  const n = lows.length;
  if (n < FEWEST) return null;
  const mean = meanOf(lows);
  const variance = lows.reduce((sum, low) => sum + (low - mean) ** 2, 0) / (n - 1);
  const k = differences.length;
  const known = k >= FEWEST_SHARED;
  const shift = known ? meanOf(differences) : 0;
  const unsure = known
    ? differences.reduce((sum, each) => sum + (each - shift) ** 2, 0) / (k - 1) / k
    : SHIFT_UNKNOWN ** 2;
  return {
    mean: celsius(mean + shift),
    sd: Math.sqrt(variance * (1 + 1 / n) + unsure),
    df: (known ? Math.min(n, k) : n) - 1,
    nights: n,
  };
}
