import { expectRange } from '../expectRange.ts';
import { median } from '../statistics/index.ts';
import { type Celsius, celsius } from '../units.ts';
import { type FrostDateCurve, firstFrostFit } from './frostDateQuantile.ts';

const FEWEST_SHARED = 3; // seasons that both have; common practice, no source

/** Own date less station date, for each season that both have a date of. */
export function dateOffsets(
  own: readonly { readonly season: number; readonly day: number | null }[],
  station: readonly { readonly season: number; readonly day: number | null }[],
): readonly number[] {
  const there = new Map(station.map(({ season, day }) => [season, day]));
  return own.flatMap(({ season, day }) => {
    const other = there.get(season) ?? null;
    return day === null || other === null ? [] : [day - other];
  });
}

/**
 * Frost dates of one's own site from a long station record and the few seasons both have: the mean
 * moves by the mean offset, and the spread takes in that of the offsets; s²(1 + 1/n) +
 * s_o²(1 + 1/k). A normal curve. null for fewer than three shared seasons: then thresholdAtStation.
 *
 * Source: common practice, no source; the sum of two prediction variances.
 * @param station mean, spread and number of the station's dates: firstFrostFit
 * @param offsets own date less station date: dateOffsets
 * @throws RangeError for offsets beyond half a year
 */
export function siteFromStation(
  station: { readonly mean: number; readonly sd: number; readonly n: number },
  offsets: readonly number[],
): FrostDateCurve | null {
  const k = offsets.length;
  expectRange('number of seasons', station.n, 2, 10_000, '');
  for (const offset of offsets) expectRange('offset of frost dates', offset, -183, 183, 'd');
  if (k < FEWEST_SHARED) return null;
  // The same sums as for dates, moved into their range.
  const shifted = firstFrostFit(offsets.map((offset) => offset + 183));
  if (shifted === null) return null;
  return {
    mean: station.mean + shifted.mean - 183,
    sd: Math.sqrt(station.sd ** 2 * (1 + 1 / station.n) + shifted.sd ** 2 * (1 + 1 / k)),
    df: Number.POSITIVE_INFINITY,
  };
}

/**
 * While fewer than three seasons are shared: the temperature at the station that means `threshold`
 * on one's own site, from the lows of clear, calm nights that both have. Station dates are then
 * found anew at that temperature. null without any such night.
 * @param differences own low less station low, K
 */
export function thresholdAtStation(
  threshold: number,
  differences: readonly number[],
): Celsius | null {
  expectRange('threshold', threshold, -100, 100, '°C');
  return differences.length === 0 ? null : celsius(threshold - median(differences));
}
