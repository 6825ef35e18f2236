import { type Instant, instant, MINUTE } from '../units.ts';
import type { Excursion } from './excursions.ts';
import type { Trace } from './trace.ts';

/** A room on its way back to its cycle after a load, a long opening or a stop. */
export type PullDown = {
  readonly since: Instant;
  readonly peak: number;
  /** When the air is expected back in its cycle; null where it comes down too slowly to say. */
  readonly backAt: Instant | null;
};

const CLEAR = 0.7; // K above the line; less is a defrost's or a door's short bump. Ours
const LOOKED_BACK = 30 * MINUTE;
const LEAST_FALL = 0.1; // K in that time
const FLOOR = 1.5; // K below the line that a pulling unit tends to: the middle of a ±1 K cycle and a half. Ours
const LONGEST = 12 * 60 * MINUTE; // beyond it a forecast says nothing. Ours

/**
 * Whether the room is being cooled down, and when it will be back: the newest half hour of its fall
 * carried on as an exponential towards a level below the line.
 *
 * Source: Newton's law of cooling for the shape; the level it tends to is ours.
 */
export function pullDown(
  smooth: Trace,
  now: Excursion,
  line: number,
  floor = line - FLOOR,
): PullDown | null {
  if (!now.falling || now.ended || now.peak < line + CLEAR) return null;
  const { t, value } = smooth;
  const last = t.length - 1;
  const at = t[last] as Instant;
  let j = last;
  while (j > 0 && (t[j - 1] as number) >= Math.max(at - LOOKED_BACK, now.peakAt)) j -= 1;
  const fall = (value[j] as number) - (value[last] as number);
  const time = at - (t[j] as number);
  const found = { since: now.since, peak: now.peak };
  if (fall < LEAST_FALL || time <= 0) return { ...found, backAt: null };
  const here = value[last] as number;
  const tau = time / Math.log((here + fall - floor) / (here - floor));
  const left = tau * Math.log((here - floor) / (line - floor));
  return { ...found, backAt: left > LONGEST ? null : instant(at + left) };
}
