import { percentile } from '../statistics/index.ts';

/** A stop of the supply: the local day it began in, counted up, and local minutes from that day's 0:00. */
export type SupplyStop = { readonly day: number; readonly from: number; readonly to: number };

/** A stop that comes nearly every day: minutes of the local day, `to` perhaps beyond 24:00. */
export type UsualStop = { readonly from: number; readonly to: number; readonly days: number };

export const STOPS_DAYS = 14; // days looked at. Ours
export const STOPS_FEWEST = 10; // of them on which it has to come. Ours
const APART = 30; // minutes that its beginning and its end may lie off the middle. Ours
const DAY = 1440; // minutes

/** Minutes from b to a on the round of a clock, -720..720. */
const apart = (a: number, b: number) => {
  const d = (((a - b) % DAY) + DAY) % DAY;
  return d > DAY / 2 ? d - DAY : d;
};

/**
 * Stops of the supply that come on at least 10 of 14 days, beginning and ending within half an hour
 * of each other: the hours in which a generator usually stands. Each is told from the early ones'
 * beginning to the late ones' end. Fewer days, or stops that wander, teach nothing.
 *
 * Source: ours, from no source.
 */
export function usualStops(stops: readonly SupplyStop[]): UsualStop[] {
  const found: UsualStop[] = [];
  let left = [...stops];
  for (;;) {
    let best: SupplyStop[] = [];
    let middle: SupplyStop | null = null;
    for (const one of left) {
      const near = left.filter(
        ({ from, to }) =>
          Math.abs(apart(from, one.from)) <= APART && Math.abs(apart(to, one.to)) <= APART,
      );
      const days = new Map(near.map((stop) => [stop.day, stop]));
      if (days.size > best.length) {
        best = [...days.values()];
        middle = one;
      }
    }
    if (middle === null || best.length < STOPS_FEWEST) break;
    const centre = middle;
    const begins = best.map(({ from }) => apart(from, centre.from));
    const ends = best.map(({ to }) => apart(to, centre.to));
    const from = centre.from + percentile(begins, 0.1);
    const to = centre.to + percentile(ends, 0.9);
    const begin = ((from % DAY) + DAY) % DAY;
    found.push({ from: begin, to: begin + (to - from), days: best.length });
    left = left.filter(
      (stop) =>
        Math.abs(apart(stop.from, centre.from)) > APART ||
        Math.abs(apart(stop.to, centre.to)) > APART,
    );
  }
  return found.sort((a, b) => a.from - b.from);
}
