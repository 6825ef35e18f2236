import { expectRange } from '../expectRange.ts';
import { frostDates, type SeasonFrost } from './frostDates.ts';
import { type FrostHistory, frostHistory } from './frostHistory.ts';
import type { Hemisphere } from './seasonDay.ts';
import { dateOffsets, thresholdAtStation } from './siteFromStation.ts';

const ENOUGH_OWN = 8; // seasons; common practice, no source: then the own record speaks alone
const ENOUGH_SHARED = 3; // seasons of dates; common practice, no source
const ENOUGH_NIGHTS = 5; // clear, calm nights; ours

/** A night's low, named by the morning that ends it. */
export type NightLowOf = { readonly night: string; readonly low: number | null };

/** How a station's record was fitted to one's own spot. */
export type Fitted = {
  /** The own record alone; offsets of dates; differences of lows; not at all. */
  readonly way: 'own' | 'dates' | 'nights' | 'none';
  /** Seasons, or nights, that both have. */
  readonly shared: number;
  /** Days that dates moved, or kelvins the spot differs by; null where nothing did. */
  readonly by: number | null;
};

/** One kind of frost at one's own spot, from all that is known. */
export type SiteFrost = {
  readonly history: FrostHistory;
  readonly fitted: Fitted;
  /** Past seasons with a known answer, as days of the spot. */
  readonly seasons: readonly SeasonFrost[];
  /** What the station reads when it freezes at the spot, °C; null without a station. */
  readonly atStation: number | null;
};

/**
 * First or last frosts at one's own spot. Eight own seasons speak for themselves. Else a long
 * station record is fitted: by the mean offset of dates with three shared seasons or more; with
 * fewer, by the median difference of lows on clear, calm nights, with which its dates are found
 * anew; with neither the station's own dates stand, and are said to.
 *
 * Source: common practice, no source.
 * @param from `differences` own low less station low on clear, calm nights that both have, K
 * @throws RangeError as frostDates
 */
export function siteFrost(from: {
  readonly own: readonly NightLowOf[];
  readonly station: readonly NightLowOf[] | null;
  readonly differences: readonly number[];
  readonly threshold: number;
  readonly hemisphere: Hemisphere;
  readonly side: 'first' | 'last';
}): SiteFrost {
  const { own, station, differences, threshold, hemisphere, side } = from;
  expectRange('threshold', threshold, -60, 60, '°C');
  const rule = { threshold, hemisphere, side };
  const mine = frostDates(own, rule).filter(({ frost }) => frost !== null);
  const alone = (): SiteFrost => ({
    history: frostHistory(mine),
    fitted: { way: 'own', shared: mine.length, by: null },
    seasons: mine,
    atStation: null,
  });
  if (mine.length >= ENOUGH_OWN || station === null) return alone();

  const there = frostDates(station, rule);
  const offsets = dateOffsets(mine, there);
  if (offsets.length >= ENOUGH_SHARED) {
    const by = offsets.reduce((sum, each) => sum + each, 0) / offsets.length;
    return {
      history: frostHistory(there, offsets),
      fitted: { way: 'dates', shared: offsets.length, by },
      seasons: known(there, by),
      atStation: threshold,
    };
  }
  const shifted =
    differences.length < ENOUGH_NIGHTS ? null : thresholdAtStation(threshold, differences);
  if (shifted === null) {
    const fitted = { way: 'none', shared: offsets.length, by: null } as const;
    return { history: frostHistory(there), fitted, seasons: known(there, 0), atStation: threshold };
  }
  const anew = frostDates(station, { ...rule, threshold: shifted });
  return {
    history: frostHistory(anew),
    fitted: { way: 'nights', shared: differences.length, by: threshold - shifted },
    seasons: known(anew, 0),
    atStation: shifted,
  };
}

const known = (seasons: readonly SeasonFrost[], by: number): SeasonFrost[] =>
  seasons.flatMap((each) =>
    each.frost === null
      ? []
      : [{ ...each, day: each.day === null ? null : Math.round(each.day + by) }],
  );
