import { type Instant, MINUTE, type Minutes, minutes } from '../units.ts';
import type { Trace } from './trace.ts';
import { wayDown } from './wayDown.ts';

// A thermostat that works brings the air back to the bottom of its cycle each time the air has been
// at the top. How long that takes is the earliest thing a fading unit or a door ajar changes.

/** The levels a working cycle passes, °C. */
export type Levels = { readonly top: number; readonly bottom: number; readonly line: number };

export type Pull = {
  /** When the air reached the top and has not been at the bottom since; null when it has. */
  readonly since: Instant | null;
  /** Minutes of that, less the time it was seen coming down from above its cycle. */
  readonly minutes: Minutes;
  /** Whether it went above the cycle on the way: a defrost, a door or a load did that. */
  readonly out: boolean;
  /** The highest it was on the way, °C. */
  readonly peak: number;
  /** Minutes since it came back from above the cycle, or since the top where it was not above. */
  readonly back: Minutes;
  /** Minutes of that in which the air has made no way down. */
  readonly flat: Minutes;
  /** The longest of these that ended at the bottom. */
  readonly longest: Longest;
};

/**
 * Minutes from top to bottom: within the cycle; by way of above it; and of that the last part; and
 * the longest stretch in it without way down that ended inside the cycle.
 */
export type Longest = {
  readonly within: Minutes;
  readonly out: Minutes;
  readonly back: Minutes;
  readonly flat: Minutes;
};

const NEAR_TOP = 0.1; // share of the swing below the top that counts as top. Ours
const NEAR_BOTTOM = 0.2; // share of the swing above the bottom that counts as bottom. Ours
const COMES_DOWN = 0.3; // K in half an hour above the cycle: a load being cooled, not a fault. Ours
// In a rest the walls still cool, and the air creeps down with them: a unit at work is much quicker.
const STEP = 0.25; // share of the swing. Ours
const STEP_LEAST = 0.2; // K, ours
const FAR = 0.5; // share of the swing, ours
const BEYOND = 0.1; // K above the usual top, ours
const LOOKED_BACK = 30 * MINUTE;

/**
 * How long the air has been on its way from the top of its cycle to the bottom. Time above the
 * cycle in which it comes down all the same (a warm load, the end of a defrost) is not counted, and
 * neither is a hole. Ours, from no source.
 */
export function lostBottom({ t, value }: Trace, levels: Levels, hole: number): Pull {
  const { top, bottom, line } = levels;
  const swing = top - bottom;
  const high = top - NEAR_TOP * swing;
  const low = bottom + NEAR_BOTTOM * swing;
  let since: Instant | null = null;
  let counted = 0;
  let out = false;
  let peak = Number.NEGATIVE_INFINITY;
  const longest = { within: 0, out: 0, back: 0, flat: 0 };
  let begin = 0; // half an hour before
  let back = 0;
  const clock = wayDown(Math.max(STEP_LEAST, STEP * swing));
  let flat = 0; // now, and the longest since the top
  let flattest = 0;
  for (let i = 0; i < t.length; i++) {
    const at = t[i] as Instant;
    const now = value[i] as number;
    const step = i === 0 ? 0 : at - (t[i - 1] as number);
    while ((t[begin] as number) < at - LOOKED_BACK) begin += 1;
    if (since !== null && step > hole) {
      since = null; // what was in the hole may have been a bottom
      counted = 0;
    }
    if (since !== null && !(now > line && (value[begin] as number) - now >= COMES_DOWN)) {
      counted += step;
    }
    back = now > line ? 0 : back + step;
    if (now <= low) {
      const way = out ? 'out' : 'within';
      if (since !== null) longest[way] = Math.max(longest[way], counted);
      if (since !== null && out) longest.back = Math.max(longest.back, back);
      longest.flat = Math.max(longest.flat, flattest);
      since = null;
      counted = 0;
      out = false;
    } else if (since === null && now >= high) {
      since = at;
      counted = 0;
      back = 0;
      clock.begin(at, now);
    }
    peak = since === null ? now : Math.max(peak, now);
    // On a cold night the air may creep up to where the unit starts: only beyond it is a rest one.
    if (peak < top + BEYOND) clock.begin(at, now);
    const rests = since === null ? 0 : clock.next(at, now);
    flat = now > line + FAR * swing ? 0 : rests; // far above the cycle another clock runs
    flattest = since === null ? 0 : Math.max(flattest, flat);
    if (since !== null && now > line) out = true;
  }
  return {
    since,
    minutes: minutes(counted / MINUTE),
    out,
    peak,
    back: minutes(back / MINUTE),
    flat: minutes(flat),
    longest: {
      within: minutes(longest.within / MINUTE),
      out: minutes(longest.out / MINUTE),
      back: minutes(longest.back / MINUTE),
      flat: minutes(longest.flat),
    },
  };
}
