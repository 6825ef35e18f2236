import { median, percentile } from '../statistics/index.ts';
import { MINUTE } from '../units.ts';
import type { Turn } from './cycleTurns.ts';

/** What a room's thermostat makes of its air while all is well. */
export type Cycle = {
  /** Where the air turns down and up, °C: the middle of all turns. */
  readonly top: number;
  readonly bottom: number;
  /** K by which a top usually lies above the middle one: the 75th percentile. */
  readonly topSpread: number;
  /** Minutes of rising and falling, middle and 90th percentile. */
  readonly riseMinutes: number;
  readonly longRise: number;
  readonly fallMinutes: number;
  /** K the air usually rises in the last five minutes before a top. */
  readonly riseAtTop: number;
  /** Share of the time that the air falls: the running share, estimated. */
  readonly fallingShare: number;
  readonly turns: number;
};

const FEWEST = 8; // turns, four cycles; ours
const LEAST = 0.4; // K between top and bottom; a smaller swing is a probe's noise. Ours

/**
 * The usual sawtooth of a room, from the turns of its air. Middles and percentiles, so that a
 * defrost or an open door among them does not count. null for fewer than four cycles, or when the
 * air hardly swings. Ours, from no source.
 */
export function learnCycle(turns: readonly Turn[]): Cycle | null {
  if (turns.length < FEWEST) return null;
  const tops = turns.filter(({ top }) => top).map(({ value }) => value);
  const bottoms = turns.filter(({ top }) => !top).map(({ value }) => value);
  const rises: number[] = [];
  const falls: number[] = [];
  const slopes: number[] = [];
  turns.forEach((turn, i) => {
    const next = turns[i + 1];
    if (next === undefined || next.top === turn.top) return;
    const minutes = (next.t - turn.t) / MINUTE;
    if (next.top) {
      rises.push(minutes);
      slopes.push((next.value - turn.value) / minutes);
    } else falls.push(minutes);
  });
  if (rises.length === 0 || falls.length === 0) return null;
  const top = median(tops);
  const bottom = median(bottoms);
  if (top - bottom < LEAST) return null;
  const sum = (row: readonly number[]) => row.reduce((all, one) => all + one, 0);
  return {
    top,
    bottom,
    topSpread: Math.max(0, percentile(tops, 0.75) - top),
    riseMinutes: median(rises),
    longRise: percentile(rises, 0.9),
    fallMinutes: median(falls),
    // A rise flattens towards its top: half its mean slope.
    riseAtTop: 2.5 * median(slopes),
    fallingShare: sum(falls) / (sum(falls) + sum(rises)),
    turns: turns.length,
  };
}
