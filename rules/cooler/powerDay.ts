import { median } from '../statistics/index.ts';
import { MINUTE } from '../units.ts';
import type { PowerDay } from './roomDay.ts';
import type { Span, Trace } from './trace.ts';

export const IDLE = 10; // W: a controller draws a few, a compressor hundreds. Common practice
const LONGEST_PAUSE = 120; // minutes: a longer one was an outage, not a pause. Ours

/** Stretches with the compressor off that were seen from beginning to end; a hole ends one. */
export function offSpans({ t, value }: Trace, hole: number): Span[] {
  const spans: Span[] = [];
  let from: number | null = null;
  for (let i = 0; i < t.length; i++) {
    const at = t[i] as Span['from'];
    if (i > 0 && at - (t[i - 1] as number) > hole) from = null;
    if ((value[i] as number) < IDLE) from ??= i === 0 ? null : at;
    else if (from !== null) {
      spans.push({ from: from as Span['from'], to: at });
      from = null;
    }
  }
  return spans;
}

/** What a day's readings of power say; null without any. Common practice, no source. */
export function powerDay(power: Trace, hole: number): PowerDay | null {
  const { t, value } = power;
  if (t.length === 0) return null;
  const working = value.filter((watts) => watts >= IDLE);
  const waiting = value.filter((watts) => watts < IDLE);
  if (working.length === 0) return null;
  const pauses = offSpans(power, hole)
    .map(({ from, to }) => (to - from) / MINUTE)
    .filter((length) => length <= LONGEST_PAUSE);
  const running = median(working);
  const half = running / 2;
  return {
    running,
    waiting: waiting.length === 0 ? null : median(waiting),
    longestPause: Math.max(0, ...pauses),
    duty: value.filter((watts) => watts > half).length / value.length,
  };
}
