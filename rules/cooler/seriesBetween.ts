import { expectRange } from '../expectRange.ts';
import type { MaybeTemperature } from '../heat/index.ts';
import { type Instant, MINUTE } from '../units.ts';

const GAP_STEPS = 3; // common practice, no source: over three usual steps without a reading is a gap
const LEAST_GAP = 10; // minutes, ours: a probe that reports each minute may lose a few

/** Longest time without a reading that is still known, for a probe that reports every so often. */
export const longestGapOf = (everyMinutes: number) => Math.max(GAP_STEPS * everyMinutes, LEAST_GAP);

/** A gap-free line of the record ends here: no longer time without a reading is ever joined. */
export const ANY_GAP = 1e9; // minutes

/**
 * Readings cut to exactly `from` and `to`, with a null at every gap, so that nothing has to know any
 * more how often this probe reported. The first is at `from`, the last at `to`. A reading stands for
 * the time beyond it, to the end of the stretch, no longer than a gap may be.
 *
 * Source: straight lines between neighbours; over three usual steps is a gap, common practice.
 * @param readings °C, in order of time; those shortly before and after the stretch serve its ends
 * @throws RangeError unless `to` is at or after `from`, and for readings not in order of time
 */
export function seriesBetween(
  readings: readonly MaybeTemperature[],
  {
    from,
    to,
    gapMaxMinutes,
  }: { readonly from: Instant; readonly to: Instant; readonly gapMaxMinutes: number },
): MaybeTemperature[] {
  expectRange('length of the stretch', to - from, 0, Number.MAX_SAFE_INTEGER, 'ms');
  expectRange('longest time between readings', gapMaxMinutes, 0, Number.MAX_VALUE, 'min');
  const gap = gapMaxMinutes * MINUTE;
  const series: MaybeTemperature[] = [];
  let before: MaybeTemperature | null = null;
  /** Value at `t` between two readings; null in a gap. */
  const between = (left: MaybeTemperature | null, right: MaybeTemperature | null, t: number) => {
    if (left?.value != null && right?.value != null && right.t - left.t <= gap) {
      const along = right.t === left.t ? 0 : (t - left.t) / (right.t - left.t);
      return left.value + (right.value - left.value) * along;
    }
    if (right === null && left?.value != null && t - left.t <= gap) return left.value;
    return null;
  };
  for (const reading of readings) {
    if (before !== null && reading.t < before.t) {
      throw new RangeError(
        `Expected readings in order of time, got ${reading.t} after ${before.t}`,
      );
    }
    if (reading.t > to) {
      begin(reading);
      end(between(before, reading, to));
      return series;
    }
    if (reading.t >= from) {
      begin(reading);
      const last = series.at(-1);
      if (last !== undefined && last.value !== null && reading.t - last.t > gap)
        series.push({ t: last.t, value: null });
      series.push(reading);
    }
    before = reading;
  }
  begin(null);
  end(between(before, null, to));
  return series;

  function begin(next: MaybeTemperature | null) {
    if (series.length > 0 || next?.t === from) return;
    series.push({ t: from, value: between(before, next, from) });
  }
  function end(value: number | null) {
    const last = series.at(-1);
    if (last?.t === to) return;
    // A gap begins where the last reading was.
    if (value === null && last !== undefined && last.value !== null)
      series.push({ t: last.t, value: null });
    series.push({ t: to, value });
  }
}

/** Stretches of such a series that nobody knows, in order. */
export function unknownSpans(
  series: readonly MaybeTemperature[],
): { readonly from: Instant; readonly to: Instant }[] {
  const spans: { from: Instant; to: Instant }[] = [];
  for (const [i, right] of series.entries()) {
    const left = series[i - 1];
    if (left === undefined || right.t === left.t) continue;
    if (left.value !== null && right.value !== null) continue;
    const last = spans.at(-1);
    if (last?.to === left.t) last.to = right.t;
    else spans.push({ from: left.t, to: right.t });
  }
  return spans;
}
