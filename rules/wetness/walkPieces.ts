import { expectRange } from '../expectRange.ts';
import { medianInterval } from '../statistics/index.ts';
import { type Celsius, celsius, HOUR, MINUTE } from '../units.ts';
import type { WetState } from './walkWetness.ts';
import type { Window } from './wetPieces.ts';
import type { Sign, SignReading } from './wetSign.ts';

/** Told about each piece inside the window in turn, ms; the pieces join without holes. */
export type PieceVisitor = (
  state: WetState,
  from: number,
  to: number,
  coldest: Celsius,
  warmest: Celsius,
) => void;

type Timed = Pick<SignReading, 't' | 'temperature'>;

// All ours, from no source.
const VALID = 30; // min between readings that still see everything
const HEALED = 2 * HOUR; // a hole no longer than this, with one state at both edges, keeps it
const AROUND_EDGES = 2; // K that a hole may have been colder or warmer than its edges
const COLDEST = celsius(-30); // where nothing was read, any temperature a garden has
const HOTTEST = celsius(60);
const SLICE = HOUR / 2; // of a healed hole, along the straight line between its edges

/**
 * The walk behind wetPieces, for those who only add up: a list per question costs more than the sum.
 * @param signOf what one reading says; null: nothing, as if it had not come
 * @throws RangeError as wetPieces
 */
export function walkPieces<Reading extends Timed>(
  readings: readonly Reading[],
  signOf: (reading: Reading) => Sign | null,
  window: Window,
  { maxGapMinutes = VALID }: { readonly maxGapMinutes?: number },
  visit: PieceVisitor,
): void {
  expectRange('longest time between readings', maxGapMinutes, 1, 1440, 'min');
  const { from: opens, to: closes } = window;
  if (!(closes >= opens)) {
    throw new RangeError(`Expected a window to end from ${opens} onwards, got ${closes}`);
  }
  const maxGap = maxGapMinutes * MINUTE;
  // Only asked for where readings stop, so a series without holes is not sorted for it.
  let known: number | null = null;
  const step = () => {
    known ??= Math.min(medianInterval(readings.filter((r) => signOf(r) !== null)) ?? 0, maxGap / 2);
    return known;
  };
  const add: PieceVisitor = (state, from, to, cold, warm) => {
    const begins = Math.max(from, opens);
    const ends = Math.min(to, closes);
    if (ends > begins) visit(state, begins, ends, cold, warm);
  };

  let each: Reading | null = null;
  let state: WetState = 'unknown';
  for (const next of readings) {
    const sign = signOf(next);
    if (sign === null) continue;
    if (each === null) {
      add('unknown', opens, next.t, COLDEST, HOTTEST);
      state = after('unknown', sign);
      each = next;
      continue;
    }
    if (next.t < each.t) {
      throw new RangeError(`Expected readings in order of time, got ${next.t} after ${each.t}`);
    }
    const near = next.t - each.t <= maxGap;
    const until = near ? next.t : each.t + step();
    const short = next.t - until <= HEALED;
    const then = after(short ? state : 'unknown', sign);
    add(state, each.t, until, each.temperature ?? COLDEST, each.temperature ?? HOTTEST);
    if (!near) {
      const same = short && then === state && state !== 'unknown';
      hole(same ? state : 'unknown', until, each, next, add);
    }
    state = then;
    each = next;
  }
  if (each === null) {
    add('unknown', opens, closes, COLDEST, HOTTEST);
  } else if (each.t < closes) {
    const until = each.t + step();
    add(state, each.t, until, each.temperature ?? COLDEST, each.temperature ?? HOTTEST);
    add('unknown', until, closes, COLDEST, HOTTEST);
  }
}

function after(before: WetState, sign: Sign): WetState {
  return sign === 'between' ? before : sign;
}

function hole(state: WetState, from: number, edge: Timed, next: Timed, add: PieceVisitor) {
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
