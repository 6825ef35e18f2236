import { expectRange } from '../expectRange.ts';
import type { MaybeTemperature } from '../heat/index.ts';
import { HOUR, type Instant, MINUTE, type Minutes, minutes } from '../units.ts';
import { timeAbove } from './timeAbove.ts';

/** Facts for a food-safety clock. No verdict: nothing here says safe, and nothing may be made to. */
export type ExposureClock = {
  readonly above: Minutes;
  readonly below: Minutes;
  /** Not known: possibly above, and never counted as below. */
  readonly unknown: Minutes;
  /** above + unknown. */
  readonly worst: Minutes;
  readonly clock: Minutes;
  /** What is left of the clock if all unknown time was above, and if none was; from 0. */
  readonly leftAtWorst: Minutes;
  readonly leftAtBest: Minutes;
  /** Terms of what to offer and to say with it, last line last. */
  readonly say: readonly string[];
};

/**
 * Time above a limit since harvest or cutting, cumulative: cooling again does not turn it back, and
 * an alarm that was cleared does not start it anew. Time before the first reading, after the last,
 * in gaps and beside nulls is unknown.
 *
 * The limit and the clock are the local food-safety officer's; see foodLimits for what some
 * countries print. Air is not product: with `of: 'air'` a core reading is to be offered.
 * @throws RangeError unless cutAt is at or before now, or the clock outside 0..100,000 min
 */
export function exposureClock(
  readings: readonly MaybeTemperature[],
  {
    cutAt,
    now,
    limit,
    clockMinutes,
    of,
    gapMaxMinutes,
  }: {
    readonly cutAt: Instant;
    readonly now: Instant;
    readonly limit: number;
    readonly clockMinutes: number;
    readonly of: 'air' | 'product';
    readonly gapMaxMinutes?: number;
  },
): ExposureClock {
  expectRange('time since cutting', now - cutAt, 0, Number.MAX_SAFE_INTEGER, 'ms');
  expectRange('clock', clockMinutes, 0, 100_000, 'min');
  const since = readings.filter(({ t }) => t >= cutAt && t <= now);
  const { aboveHours, belowHours } = timeAbove(since, limit, { gapMaxMinutes });
  const above = (aboveHours * HOUR) / MINUTE;
  const below = (belowHours * HOUR) / MINUTE;
  const unknown = Math.max(0, (now - cutAt) / MINUTE - above - below);
  const left = (used: number) => minutes(Math.max(0, clockMinutes - used));
  return {
    above: minutes(above),
    below: minutes(below),
    unknown: minutes(unknown),
    worst: minutes(above + unknown),
    clock: minutes(clockMinutes),
    leftAtWorst: left(above + unknown),
    leftAtBest: left(above),
    say: [...(of === 'air' ? ['take-core-reading'] : []), 'not-a-recorder', 'ask-officer'],
  };
}
