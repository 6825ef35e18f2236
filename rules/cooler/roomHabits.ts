import { median } from '../statistics/index.ts';
import { type Hours, type Minutes, minutes } from '../units.ts';
import { type Defrosts, defrostDue, findDefrosts } from './findDefrosts.ts';
import type { Cycle } from './learnCycle.ts';
import type { Longest } from './lostBottom.ts';
import { lineOf, type RoomDay } from './roomDay.ts';
import type { UnitCalls } from './unitCalls.ts';

/** What is usual in one room, learned from its days; what was not learned has a default of ours. */
export type RoomHabits = {
  readonly days: number;
  /** Whether the cycle is this room's own. */
  readonly learned: boolean;
  readonly top: number;
  readonly bottom: number;
  /** °C above which the air is out of its cycle; K in 5 minutes that are steep. */
  readonly line: number;
  readonly steep: number;
  readonly cycle: Cycle | null;
  readonly defrosts: Defrosts | null;
  /** Minutes the air may make no way down: after a slow rise, a steep one, and half-way down. */
  readonly patience: { readonly slow: Minutes; readonly steep: Minutes; readonly halt: Minutes };
  /** Minutes the way from top to bottom may take. */
  readonly pull: Longest;
  /** Below this the air never was, °C. */
  readonly lowest: number;
  /** Minutes a healthy probe may send one value; null while the cycle is not known. */
  readonly same: Minutes | null;
  readonly watts: {
    readonly running: number;
    readonly waiting: number | null;
    readonly pause: number;
  } | null;
  readonly coil: { readonly lowest: number; readonly belowAir: number } | null;
  /** How warm the air is when the unit starts and stops, °C. */
  readonly calls: UnitCalls | null;
  /** Share of the time that the unit runs, and the difference outside to inside, K, at which. */
  readonly duty: { readonly share: number; readonly gap: number | null } | null;
  /** The warmest outside that the rest was learned under; null for not known. */
  readonly warmest: number | null;
  /** Time constants learned, oldest first. */
  readonly tauFits: readonly Hours[];
};

const FEWEST_DAYS = 2; // ours
const KNOWN = 0.7; // share of a day that must be on record. Ours
// Defaults until the room has shown its own, and bounds of what it may teach. Minutes, ours.
const SLOW = { until: 20, least: 15, most: 35 };
const STEEP = { until: 12, least: 22, most: 50 };
const HALT = { until: 60, least: 30, most: 60 };
const PULL = {
  until: 120,
  within: { least: 30, most: 150 },
  out: { least: 45, most: 210 },
  back: { least: 60, most: 150 },
  flat: { until: 120, least: 25, most: 75 },
};
const SAME = { least: 20, most: 240 };
const MORE = 4; // minutes past the longest seen
const ODD = 2; // times the next largest; such a day teaches nothing
const PULL_MORE = { within: 1.6, out: 2, back: 2.2, flat: 1.4 };
const COLDER = 0.5; // K below the coldest seen
const CUT = { top: 1, bottom: -1, line: 1.5 }; // K from set point: a thermostat of ±1 K, common practice
const COLD_UNTIL = -2; // K from set point, until learned. Ours

const UNTIL: Longest = {
  within: minutes(PULL.until),
  out: minutes(PULL.until),
  back: minutes(PULL.until),
  flat: minutes(PULL.flat.until),
};

/**
 * The largest of the days' largest values; when it is far beyond the next, that day was odd, with a
 * fault perhaps, and the next speaks. The largest of none is 0.
 */
function usualMost(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => b - a);
  const [first = 0, second] = sorted;
  return second !== undefined && sorted.length >= 5 && first > ODD * second ? second : first;
}
const held = (value: number, { least, most }: { least: number; most: number }) =>
  minutes(Math.min(most, Math.max(least, value)));

/**
 * A room's habits out of its days, the youngest last. Every limit is what the room itself needs in
 * good days and a little more, held between bounds: so a room with long defrosts or a busy door is
 * not alarmed at for what it always does. Ours, from no source; the way is that of fitDriftMargin.
 */
export function roomHabits(
  all: readonly RoomDay[],
  { setPoint, every }: { readonly setPoint: number; readonly every: number },
): RoomHabits {
  const days = all.filter(({ known, cycle }) => known >= KNOWN && cycle !== null);
  const cycle = days.length < FEWEST_DAYS ? null : middleCycle(days);
  const tauFits = all.flatMap((day) => day.tauFits);
  const watts = wattsOf(all);
  const coil = coilOf(all);
  const calls = callsOf(all);
  const duty = dutyOf(all);
  const outs = all.flatMap(({ warmestOutside }) => warmestOutside ?? []);
  const warmest = outs.length === 0 ? null : usualMost(outs);
  if (cycle === null) {
    return {
      ...{
        days: days.length,
        learned: false,
        cycle,
        defrosts: null,
        tauFits,
        watts,
        coil,
        calls,
        duty,
        warmest,
      },
      ...{ top: setPoint + CUT.top, bottom: setPoint + CUT.bottom, line: setPoint + CUT.line },
      ...{ steep: 1, pull: UNTIL, lowest: setPoint + COLD_UNTIL, same: null },
      patience: {
        slow: minutes(SLOW.until),
        steep: minutes(STEEP.until),
        halt: minutes(HALT.until),
      },
    };
  }
  const bumps = days.map((day) => day.bumps);
  const defrosts = findDefrosts(bumps.flat(), days.length);
  const most = (of: (bump: RoomDay['bumps'][number]) => number | null) =>
    usualMost(bumps.map((row) => Math.max(0, ...row.map((bump) => of(bump) ?? 0))));
  const slow = most((b) => (b.steep || defrostDue(defrosts, b.at) ? null : b.longestRise));
  const steep = most((b) => (b.steep ? b.longestRise : null));
  const halt = most((b) => b.longestHalt);
  const longestOf = (way: keyof Longest) =>
    usualMost(days.map(({ longestPull }) => longestPull[way]));
  const { line, steep: slope } = lineOf(cycle, every);
  const lows = days.map(({ lowest }) => lowest ?? cycle.bottom).sort((a, b) => a - b);
  return {
    ...{
      days: days.length,
      learned: true,
      cycle,
      defrosts,
      tauFits,
      watts,
      coil,
      calls,
      duty,
      warmest,
      line,
    },
    ...{ top: cycle.top, bottom: cycle.bottom, steep: slope },
    patience: {
      slow: held(slow + MORE, SLOW),
      steep: held(steep + MORE, STEEP),
      halt: held(halt + MORE, HALT),
    },
    pull: {
      within: held(longestOf('within') * PULL_MORE.within, PULL.within),
      out: held(longestOf('out') * PULL_MORE.out, PULL.out),
      back: held(longestOf('back') * PULL_MORE.back, PULL.back),
      flat: held(longestOf('flat') * PULL_MORE.flat, PULL.flat),
    },
    lowest: (lows[lows.length >= 5 ? 1 : 0] ?? cycle.bottom) - COLDER,
    same: held(2 * usualMost(days.map(({ longestSame }) => longestSame)), SAME),
  };
}

/** Each figure of the cycle is the middle of the days' figures. */
function middleCycle(days: readonly RoomDay[]): Cycle {
  const cycles = days.flatMap(({ cycle }) => cycle ?? []);
  const of = (key: keyof Cycle) => median(cycles.map((cycle) => cycle[key]));
  return {
    top: of('top'),
    bottom: of('bottom'),
    topSpread: of('topSpread'),
    riseMinutes: of('riseMinutes'),
    longRise: Math.max(...cycles.map(({ longRise }) => longRise)),
    fallMinutes: of('fallMinutes'),
    riseAtTop: of('riseAtTop'),
    fallingShare: of('fallingShare'),
    turns: cycles.reduce((sum, { turns }) => sum + turns, 0),
  };
}

function wattsOf(days: readonly RoomDay[]): RoomHabits['watts'] {
  const powers = days.flatMap(({ power }) => power ?? []);
  if (powers.length === 0) return null;
  const waiting = powers.flatMap((power) => power.waiting ?? []);
  return {
    running: median(powers.map(({ running }) => running)),
    waiting: waiting.length === 0 ? null : median(waiting),
    pause: usualMost(powers.map(({ longestPause }) => longestPause)),
  };
}

/** By the meter where there is one, else by how long the air falls. */
function dutyOf(days: readonly RoomDay[]): RoomHabits['duty'] {
  const shares = days.flatMap(({ power, cycle }) => power?.duty ?? cycle?.fallingShare ?? []);
  if (shares.length === 0) return null;
  const gaps = days.flatMap(({ meanOutside, meanInside }) =>
    meanOutside === null || meanInside === null ? [] : [meanOutside - meanInside],
  );
  return { share: median(shares), gap: gaps.length === 0 ? null : median(gaps) };
}

function callsOf(days: readonly RoomDay[]): UnitCalls | null {
  const calls = days.flatMap((day) => day.calls ?? []);
  if (calls.length < FEWEST_DAYS) return null;
  const of = (key: keyof UnitCalls) => median(calls.map((each) => each[key]));
  return { startsAt: of('startsAt'), stopsAt: of('stopsAt') };
}

function coilOf(days: readonly RoomDay[]): RoomHabits['coil'] {
  const coils = days.flatMap(({ coil }) => coil ?? []);
  if (coils.length < FEWEST_DAYS) return null;
  const lows = coils.map(({ lowest }) => lowest).sort((a, b) => a - b);
  return {
    lowest: lows[coils.length >= 5 ? 1 : 0] ?? 0,
    belowAir: median(coils.map(({ belowAir }) => belowAir)),
  };
}
