import { filledFrom, longestGapOf, unknownSpans } from '../../rules/cooler/index.ts';
import { type Instant, instant, MINUTE } from '../../rules/units.ts';
import type { Placement, Point } from '../store/index.ts';

/** Where readings come from: which probe hung where, and what it measured. */
export type Readings = {
  readonly points: (
    place: string,
    spot: string,
    quantity: string,
    from: number,
    to: number,
  ) => readonly Point[];
  readonly overlapping: (
    place: string,
    spot: string | null,
    from: number,
    to: number,
  ) => readonly Placement[];
  /** How often a probe means to report, ms. */
  readonly everyMs: (probe: string) => number;
};

export type Series = { readonly t: Instant; readonly value: number | null }[];

/** In a cool room the crate speaks first, then the air. */
export const OF_PRODUCE = ['product', 'air', 'canopy'] as const;
/** Of the room as such: its air. */
export const OF_ROOM = ['air', 'canopy', 'product'] as const;
/** Where it was harvested: the plants. */
export const OF_FIELD = ['canopy', 'air', 'under-cover', 'grass', 'product'] as const;

/**
 * Temperatures of a place from `from` to `to`, with a null at every gap: the first spot of `order`
 * where a probe hung, and where that one is silent the next.
 */
export function placeSeries(
  readings: Readings,
  place: string,
  order: readonly string[],
  from: number,
  to: number,
): Series {
  let series: Series = [
    { t: instant(from), value: null },
    { t: instant(to), value: null },
  ];
  for (const spot of order) {
    const here = readings.overlapping(place, spot, from, to);
    if (here.length === 0) continue;
    const every = Math.max(...here.map(({ probe }) => readings.everyMs(probe)));
    const gap = longestGapOf(every / MINUTE);
    // A little before and after, so that the ends are joined to their neighbours.
    const margin = gap * MINUTE;
    const points = readings.points(place, spot, 'temperature', from - margin, to + margin);
    series = filledFrom(series, points as Series, gap);
    if (unknownSpans(series).length === 0) break;
  }
  return series;
}
