import { percentile } from '../statistics/index.ts';
import { HOUR, type Hours, type Instant, MINUTE, type Minutes, minutes } from '../units.ts';
import { cycleTurns } from './cycleTurns.ts';
import { excursions } from './excursions.ts';
import type { Bump } from './findDefrosts.ts';
import { type Cycle, learnCycle } from './learnCycle.ts';
import { type Longest, lostBottom } from './lostBottom.ts';
import { sameValue } from './sameValue.ts';
import { smoothTrace, type Trace } from './trace.ts';
import type { UnitCalls } from './unitCalls.ts';

/** What one day of a cool room shows of its habits. */
export type RoomDay = {
  readonly from: Instant;
  /** Share of the day with readings of the air, 0..1. */
  readonly known: number;
  readonly cycle: Cycle | null;
  readonly bumps: readonly (Bump & {
    readonly longestRise: number;
    readonly longestHalt: number;
  })[];
  /** Longest way from top to bottom that arrived, as lostBottom tells it. */
  readonly longestPull: Longest;
  readonly lowest: number | null;
  readonly longestSame: Minutes;
  readonly meanInside: number | null;
  readonly meanOutside: number | null;
  readonly warmestOutside: number | null;
  readonly power: PowerDay | null;
  readonly coil: { readonly lowest: number; readonly belowAir: number } | null;
  /** Where in its cycle the unit starts and stops, by meter or coil. */
  readonly calls: UnitCalls | null;
  readonly tauFits: readonly Hours[];
  /** kWh, and whether it is only the least it can have been. */
  readonly kilowattHours: number | null;
};

export type PowerDay = {
  /** W while it works, and in pauses; null when it never paused. */
  readonly running: number;
  readonly waiting: number | null;
  /** Longest pause of the compressor, minutes, outages left out. */
  readonly longestPause: number;
  readonly duty: number | null;
};

export const LINE_ABOVE = 0.2; // K above the tops of the cycle: a probe's noise and step. Ours
const STEEP_LEAST = 0.75; // K in five minutes, ours: 1 K is common practice for a bare probe, this for one that lags
const STEEP_OF_RISE = 2; // times the cycle's own rise near its top. Ours; doors make 5 to 20 times

/** Above what the air is out of its cycle, and from what slope that came steeply. */
export function lineOf(cycle: Cycle, every: number) {
  return {
    line: cycle.top + LINE_ABOVE + Math.min(0.3, cycle.topSpread),
    steep: Math.max(STEEP_LEAST, STEEP_OF_RISE * cycle.riseAtTop),
    hole: Math.max(10, 3 * every) * MINUTE,
  };
}

/** The day's habits by its air alone; the rest is given. */
export function roomDay(
  air: Trace,
  day: { readonly from: Instant; readonly to: Instant; readonly every: number },
  others: Pick<
    RoomDay,
    'meanOutside' | 'warmestOutside' | 'power' | 'coil' | 'calls' | 'tauFits' | 'kilowattHours'
  >,
): RoomDay {
  const { from, to, every } = day;
  const smooth = smoothTrace(air, from, to);
  const hole = Math.max(10, 3 * every) * MINUTE;
  const cycle = learnCycle(cycleTurns(smooth, hole));
  const above = cycle === null ? [] : excursions(smooth, lineOf(cycle, every));
  const values = smooth.value;
  const span = Math.max(HOUR, to - from);
  return {
    from,
    known: Math.min(1, (values.length * every * MINUTE) / span),
    cycle,
    bumps: above
      .filter(({ ended }) => ended)
      .map(({ since, peakAt, steep, longestRise, longestHalt }) => {
        const rise = (peakAt - since) / MINUTE;
        return { at: since, rise, steep, longestRise, longestHalt };
      }),
    longestPull:
      cycle === null
        ? { within: minutes(0), out: minutes(0), back: minutes(0), flat: minutes(0) }
        : lostBottom(smooth, { ...cycle, line: lineOf(cycle, every).line }, hole).longest,
    lowest: values.length === 0 ? null : percentile(values, 0.002),
    longestSame: sameValue(air, hole).longest,
    meanInside: values.length === 0 ? null : values.reduce((a, b) => a + b, 0) / values.length,
    ...others,
  };
}
