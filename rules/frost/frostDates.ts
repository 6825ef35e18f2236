import { expectRange } from '../expectRange.ts';
import { type Hemisphere, MIDWINTER, seasonDay } from './seasonDay.ts';

const MOST_MISSING = 5; // nights of the frost window; common practice, no source

// When frost may come, in season days: 1 September to midwinter and midwinter to 31 May in the
// north, 1 March and 30 November in the south. Ours; a setting.
const USUAL_WINDOW = {
  north: { first: [62, 183], last: [184, 334] },
  south: { first: [59, 180], last: [181, 333] },
} as const;

/** The frost of one season: its season day; null for a season without one, and when not known. */
export type SeasonFrost = {
  readonly season: number;
  readonly day: number | null;
  /** Whether the season had such a frost; null when too many nights of the window are missing. */
  readonly frost: boolean | null;
  /** Nights of the window without a low. */
  readonly missing: number;
};

/**
 * First autumn frosts or last spring frosts, season by season: the first night of the season with
 * a low at or below `threshold`, or the last one after midwinter. For each threshold (2, 0, -1.1,
 * -2.2 °C) and each height of probe apart. A season with more than five missing nights in the
 * frost window gives no date.
 * @param nights each named by the calendar day on which it ended; in any order
 * @param window season days in which no more than five nights may be missing
 * @throws RangeError for a night that is no calendar day, or a threshold outside ±100 °C
 */
export function frostDates(
  nights: readonly { readonly night: string; readonly low: number | null }[],
  rule: {
    readonly threshold: number;
    readonly hemisphere: Hemisphere;
    readonly side: 'first' | 'last';
    readonly window?: readonly [from: number, to: number] | undefined;
  },
): readonly SeasonFrost[] {
  const { threshold, hemisphere, side } = rule;
  expectRange('threshold', threshold, -100, 100, '°C');
  const [from, to] = rule.window ?? USUAL_WINDOW[hemisphere][side];
  expectRange('end of the frost window', to, from, 366, '');

  const seasons = new Map<number, Map<number, number>>();
  for (const { night, low } of nights) {
    const { season, day } = seasonDay(night, hemisphere);
    const lows = seasons.get(season) ?? new Map<number, number>();
    seasons.set(season, lows);
    if (low !== null) lows.set(day, low);
  }
  return [...seasons]
    .sort(([a], [b]) => a - b)
    .map(([season, lows]) => {
      let missing = 0;
      for (let day = from; day <= to; day += 1) if (!lows.has(day)) missing += 1;
      if (missing > MOST_MISSING) return { season, day: null, frost: null, missing };
      const frosts = [...lows]
        .filter(
          ([day, low]) => low <= threshold && (side === 'first' || day >= MIDWINTER[hemisphere]),
        )
        .map(([day]) => day);
      if (frosts.length === 0) return { season, day: null, frost: false, missing };
      const day = side === 'first' ? Math.min(...frosts) : Math.max(...frosts);
      return { season, day, frost: true, missing };
    });
}

/**
 * Share of seasons that have such a frost at all, (k + ½)/(n + 1), over the seasons that are known.
 * null when none is.
 */
export function frostShare(seasons: readonly Pick<SeasonFrost, 'frost'>[]): number | null {
  const known = seasons.filter(({ frost }) => frost !== null);
  if (known.length === 0) return null;
  return (known.filter(({ frost }) => frost).length + 0.5) / (known.length + 1);
}
