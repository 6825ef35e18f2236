import { type Instant, instant, MINUTE, type Minutes, minutes } from '../units.ts';
import type { Trace } from './trace.ts';

/** One stretch in which the air stood above its cycle. */
export type Excursion = {
  readonly since: Instant;
  /** The newest reading of it, or its last. */
  readonly to: Instant;
  readonly ended: boolean;
  readonly peak: number;
  readonly peakAt: Instant;
  /** Whether it came as an open door or a load lets it: much steeper than the cycle's own rise. */
  readonly steep: boolean;
  /** K in the steepest five minutes since it left the cycle. */
  readonly steepest: number;
  /** K by which it came down again from its high, at most: a door that stays open does not let it. */
  readonly dip: number;
  /** Whether it is on its way back: fallen clearly since its last high. */
  readonly falling: boolean;
  /** Since when it has made no way down. */
  readonly stalledSince: Instant;
  readonly now: number;
  /** Longest times without way down, before and after it first fell. */
  readonly longestRise: Minutes;
  readonly longestHalt: Minutes;
};

export type Above = {
  /** °C; above it the air is out of its cycle. */
  readonly line: number;
  /** K in five minutes from which a rise is called steep. */
  readonly steep: number;
  /** ms; a longer hole ends a stretch: nobody knows what was in it. */
  readonly hole: number;
};

// Ours, tried on simulated rooms.
const TURNED = 0.25; // K below its high: it comes down
const ON_ITS_WAY = 0.15; // K further down: still coming
const TURNED_UP = 0.5; // K above its low: it rises again
const STEEP_SPAN = 5 * MINUTE;

const MEAN_STEEP = 0.7; // of the steep rise, kept up since it left the cycle

type Walk = {
  -readonly [Key in keyof Omit<Excursion, 'ended'>]: Excursion[Key];
} & { ref: number; readonly from: number };

/**
 * Every stretch above the line, oldest first, with its clock: how long the air has made no way
 * down. A compressor that runs brings it down within minutes of a defrost or a door; when nothing
 * cools, or the door stays open, the clock runs on.
 *
 * Ours, from no source: the clock is what tells a fault from a defrost, a load or an opening.
 */
export function excursions(trace: Trace, { line, steep, hole }: Above): Excursion[] {
  const { t, value } = trace;
  const all: Excursion[] = [];
  let walk: Walk | null = null;
  const close = (ended: boolean) => {
    if (walk === null) return;
    const { ref: _, from: __, ...rest } = walk;
    all.push({ ...rest, ended });
    walk = null;
  };
  for (let i = 0; i < t.length; i++) {
    const at = t[i] as Instant;
    const now = value[i] as number;
    const seen = i > 0 && at - (t[i - 1] as number) <= hole; // what came before is known
    if (!seen) close(true);
    if (now <= line) {
      close(true);
      continue;
    }
    const rise = riseInto(trace, i);
    if (walk === null) walk = begun(at, now, seen ? line : now);
    else follow(walk, at, now);
    if (!walk.falling) walk.steepest = Math.max(walk.steepest, rise);
    walk.steep = walk.steepest >= steep || meanRise(walk) >= MEAN_STEEP * steep;
  }
  close(false);
  return all;
}

const begun = (at: Instant, now: number, from: number): Walk => ({
  from,
  ...{
    since: at,
    to: at,
    peak: now,
    peakAt: at,
    steep: false,
    steepest: 0,
    falling: false,
    dip: 0,
  },
  ...{ stalledSince: at, now, longestRise: minutes(0), longestHalt: minutes(0), ref: now },
});

function follow(walk: Walk, at: Instant, now: number) {
  walk.to = at;
  walk.now = now;
  if (now > walk.peak) {
    walk.peak = now;
    walk.peakAt = at;
  }
  walk.dip = Math.max(walk.dip, walk.peak - now);
  const halted = minutes((at - walk.stalledSince) / MINUTE);
  if (!walk.falling) {
    walk.ref = Math.max(walk.ref, now);
    walk.longestRise = minutes(Math.max(walk.longestRise, halted));
    if (now <= walk.ref - TURNED) turnDown(walk, at, now);
    return;
  }
  walk.longestHalt = minutes(Math.max(walk.longestHalt, halted));
  if (now <= walk.ref - ON_ITS_WAY) turnDown(walk, at, now);
  else if (now >= walk.ref + TURNED_UP) {
    walk.falling = false;
    walk.ref = now;
    walk.steepest = 0; // a new rise is judged by itself
  }
}

function turnDown(walk: Walk, at: Instant, now: number) {
  walk.falling = true;
  walk.ref = now;
  walk.stalledSince = at;
}

/**
 * K in five minutes on the way from the line to the peak, once that took some minutes; after a hole
 * in the readings, from the first of them: nobody saw it rise that far.
 */
function meanRise({ since, peak, peakAt, from }: Walk): number {
  const time = peakAt - since;
  return time < STEEP_SPAN ? 0 : ((peak - from) * STEEP_SPAN) / time;
}

/** K that the air rose in the five minutes up to this reading, or since the one before it. */
function riseInto({ t, value }: Trace, i: number): number {
  const at = t[i] as number;
  const now = value[i] as number;
  let j = i;
  let lowest = now;
  while (j > 0 && at - (t[j - 1] as number) <= STEEP_SPAN) {
    j -= 1;
    lowest = Math.min(lowest, value[j] as number);
  }
  if (j < i) return now - lowest;
  const before = value[i - 1];
  const step = before === undefined ? 0 : at - (t[i - 1] as number);
  // Of a slower probe the whole step counts, as if it had come evenly.
  return before === undefined ? 0 : ((now - before) * STEEP_SPAN) / Math.max(STEEP_SPAN, step);
}

/** Minutes since the air last made way down; 0 outside an excursion. */
export const stalled = ({ stalledSince }: Excursion, now: Instant): Minutes =>
  minutes(Math.max(0, now - stalledSince) / MINUTE);

export const startOf = ({ since }: Excursion) => instant(since);
