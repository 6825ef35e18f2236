import { expectRange } from '../expectRange.ts';
import { medianInterval } from '../statistics/index.ts';
import { type Celsius, celsius, HOUR, type Instant, instant, MINUTE } from '../units.ts';
import type { WetState } from './walkWetness.ts';
import type { Sign, SignReading } from './wetSign.ts';

/** A piece of time, wet, dry or unknown, and between which temperatures it was. */
export type WetPiece = {
  readonly state: WetState;
  readonly from: Instant;
  readonly to: Instant;
  /** The same as `warmest` where it was read. */
  readonly coldest: Celsius;
  readonly warmest: Celsius;
};

/** A stretch of time, from when to when. */
export type Window = { readonly from: Instant; readonly to: Instant };

// All ours, from no source.
const VALID = 30; // min between readings that still see everything
const HEALED = 2 * HOUR; // a hole no longer than this, with one state at both edges, keeps it
const AROUND_EDGES = 2; // K that a hole may have been colder or warmer than its edges
const COLDEST = celsius(-30); // where nothing was read, any temperature a garden has
const HOTTEST = celsius(60);
const SLICE = HOUR / 2; // of a healed hole, along the straight line between its edges

/**
 * Cuts a window of time into wet, dry and unknown pieces that join without holes, so that wet time
 * can be given as least and most. A gap is never dry.
 *
 * A reading speaks until the next one, if that is at most `maxGapMinutes` away; before a longer gap
 * it speaks for its usual step, and half of `maxGapMinutes` at the most. What is left of the gap
 * is unknown, except that up to 2 h of it with one state at both edges keep that state. Within the
 * two levels leaves stay as they were, but only where it is known how they were: with nothing
 * before, or after a longer gap, they are unknown. The piece before a late reading is not given
 * its state: that would let a gap hide wet time.
 * @param readings in order of time; those from before and after the window help at its ends
 * @throws RangeError for readings not in order of time, or a window that ends before it begins
 */
export function wetPieces(
  readings: readonly SignReading[],
  window: Window,
  { maxGapMinutes = VALID }: { readonly maxGapMinutes?: number } = {},
): WetPiece[] {
  expectRange('longest time between readings', maxGapMinutes, 1, 1440, 'min');
  if (!(window.to >= window.from)) {
    throw new RangeError(`Expected a window to end from ${window.from} onwards, got ${window.to}`);
  }
  const speaking = readings.filter((each) => each.sign !== null);
  const maxGap = maxGapMinutes * MINUTE;
  const step = Math.min(medianInterval(speaking) ?? 0, maxGap / 2);
  const pieces: WetPiece[] = [];
  const add = (state: WetState, from: number, to: number, cold: Celsius, warm: Celsius) => {
    const begins = Math.max(from, window.from);
    const ends = Math.min(to, window.to);
    if (ends <= begins) return;
    pieces.push({ state, from: instant(begins), to: instant(ends), coldest: cold, warmest: warm });
  };

  const first = speaking[0];
  if (first === undefined) {
    add('unknown', window.from, window.to, COLDEST, HOTTEST);
    return pieces;
  }
  add('unknown', window.from, first.t, COLDEST, HOTTEST);
  let state: WetState = after('unknown', first.sign);
  speaking.forEach((each, index) => {
    const [cold, warm] = [each.temperature ?? COLDEST, each.temperature ?? HOTTEST];
    const next = speaking[index + 1];
    if (next === undefined) {
      add(state, each.t, each.t + step, cold, warm);
      add('unknown', each.t + step, window.to, COLDEST, HOTTEST);
      return;
    }
    if (next.t < each.t) {
      throw new RangeError(`Expected readings in order of time, got ${next.t} after ${each.t}`);
    }
    const near = next.t - each.t <= maxGap;
    const until = near ? next.t : each.t + step;
    const short = next.t - until <= HEALED;
    const then = after(short ? state : 'unknown', next.sign);
    add(state, each.t, until, cold, warm);
    if (!near) {
      const same = short && then === state && state !== 'unknown';
      hole(same ? state : 'unknown', until, { ...each, t: instant(until) }, next, add);
    }
    state = then;
  });
  return pieces;
}

function after(before: WetState, sign: Sign | null): WetState {
  return sign === 'between' || sign === null ? before : sign;
}

type Add = (state: WetState, from: number, to: number, cold: Celsius, warm: Celsius) => void;

function hole(state: WetState, from: number, edge: SignReading, next: SignReading, add: Add) {
  if (edge.temperature === null || next.temperature === null) {
    add(state, from, next.t, COLDEST, HOTTEST);
    return;
  }
  if (state === 'unknown') {
    const cold = Math.min(edge.temperature, next.temperature) - AROUND_EDGES;
    const warm = Math.max(edge.temperature, next.temperature) + AROUND_EDGES;
    add(state, from, next.t, celsius(cold), celsius(warm));
    return;
  }
  const slope = (next.temperature - edge.temperature) / (next.t - from);
  for (let begins = from; begins < next.t; begins += SLICE) {
    const ends = Math.min(begins + SLICE, next.t);
    const middle = celsius(edge.temperature + slope * ((begins + ends) / 2 - from));
    add(state, begins, ends, middle, middle);
  }
}
