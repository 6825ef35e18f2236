import type { Instant } from '../units.ts';
import type { Trace } from './trace.ts';

const DEAD_BAND = 0.2; // K a turn must exceed to be one; common practice

export type Turn = { readonly t: Instant; readonly value: number; readonly top: boolean };

/**
 * Tops and bottoms in turn, swings of 0.2 K and less left out. The stretches before the first and
 * after the last turn are cut off and left out. A hole longer than `hole` ms begins anew.
 * Common practice, no source.
 */
export function cycleTurns({ t, value }: Trace, hole: number, deadBand = DEAD_BAND): Turn[] {
  const turns: Turn[] = [];
  let top = { t: t[0] as Instant, value: value[0] as number };
  let bottom = top;
  let rising: boolean | null = null;
  for (let i = 1; i < t.length; i++) {
    const point = { t: t[i] as Instant, value: value[i] as number };
    if (point.t - (t[i - 1] as number) > hole) {
      rising = null;
      top = point;
      bottom = point;
      continue;
    }
    if (point.value > top.value) top = point;
    if (point.value < bottom.value) bottom = point;
    if (rising !== false && top.value - point.value > deadBand) {
      if (rising === true) turns.push({ ...top, top: true });
      rising = false;
      bottom = point;
    } else if (rising !== true && point.value - bottom.value > deadBand) {
      if (rising === false) turns.push({ ...bottom, top: false });
      rising = true;
      top = point;
    }
  }
  return turns;
}
