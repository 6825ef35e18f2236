import { heatLoad } from '../days/index.ts';
import { celsius, HOUR, type Instant, instant } from '../units.ts';
import { around, highest, readAt, within } from './column.ts';
import { type Look, outsideNow } from './look.ts';
import type { Column } from './snapshot.ts';

const A_DAY = 24 * HOUR;
/** Today may differ from yesterday by so much, K, and still be reckoned by it. Ours. */
export const MOST_APART = 6;
const HELD = HOUR / 2; // a reading speaks for so long at most; ours
const FRESH = 12 * HOUR; // a pushed forecast older than this has no say; ours

export type HeatAhead = {
  /** Over the limit from now to sunset, °C h. */
  readonly degreeHours: number;
  readonly hottest: number;
  /** Hours over the limit. */
  readonly hours: number;
  /** K by which today is warmer than yesterday at this hour, or is foretold to be. */
  readonly warmer: number;
  /** When yesterday, so moved, passed the limit; null when it does not from now on. */
  readonly crosses: Instant | null;
  readonly by: 'yesterday' | 'forecast';
};

/**
 * The heat still to come today in one place: yesterday's readings there from this hour to sunset,
 * each moved by how much warmer it is now than it was yesterday at this hour; by a pushed forecast
 * where one speaks of this afternoon: its highest, less the highest that was read outside
 * yesterday afternoon. null where yesterday was not read.
 *
 * Source: persistence; ours, from no source.
 */
export function heatAhead(look: Look, column: Column, limit: number): HeatAhead | null {
  const { now, sun } = look;
  if (sun === null) return null;
  const [from, to] = [now - A_DAY, sun.set - A_DAY];
  // Both from the ten minutes before: a morning that rises would else look cooler than it is.
  const then = around(column, from, instant(from));
  const today = around(column, now, now);
  if (then === null || today === null) return null;
  const foretold = pushedWarmer(look);
  const warmer = clamped(foretold ?? today - then);
  const window = within(column, from, to);
  const moved = [];
  let crosses: Instant | null = null;
  for (let i = window.from; i < window.to; i++) {
    const read = readAt(column, i);
    if (read === null) continue;
    const t = instant(read.t + A_DAY);
    const temperature = celsius(read.value + warmer);
    if (crosses === null && temperature > limit) crosses = t;
    moved.push({ t, temperature });
  }
  const load = heatLoad(moved, limit, { from: now, to: sun.set });
  // Half of the rest of yesterday without readings tells nothing of today.
  if (load.hottest === null || load.unknownHours > (sun.set - now) / HOUR / 2) return null;
  let hours = 0;
  for (const [i, { t, temperature }] of moved.entries())
    if (temperature > limit) hours += Math.min(HELD, (moved[i + 1]?.t ?? sun.set) - t) / HOUR;
  return {
    hours,
    degreeHours: load.degreeHours[0],
    hottest: load.hottest,
    warmer,
    crosses,
    by: foretold === null ? 'yesterday' : 'forecast',
  };
}

const clamped = (apart: number) => Math.min(MOST_APART, Math.max(-MOST_APART, apart));

/** K by which a pushed forecast says this afternoon is warmer outside than yesterday's was. */
function pushedWarmer({ snapshot, now, sun }: Look): number | null {
  const outside = outsideNow(snapshot);
  if (outside === null || sun === null) return null;
  const before = highest(outside.column, now - A_DAY, sun.set - A_DAY);
  if (before === null) return null;
  const said = (snapshot.pushed ?? []).flatMap(({ temperature, issuedAt }) => {
    const top = now - issuedAt > FRESH ? null : highest(temperature, now, sun.set);
    return top === null ? [] : [top.value - before.value];
  });
  return said.length === 0 ? null : Math.max(...said);
}
