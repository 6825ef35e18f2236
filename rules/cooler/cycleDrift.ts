import { expectRange } from '../expectRange.ts';
import type { MaybeTemperature } from '../heat/index.ts';
import { percentile } from '../statistics/index.ts';
import { type Celsius, celsius, type Instant, type Kelvin, kelvin, MINUTE } from '../units.ts';

// A thermostat makes a sawtooth whose minutes copy each other, so a chart on minutes alarms without
// end. These rules look at the bottom of the cycle over a window instead: while cooling works, the
// air keeps coming back to it. Tried on a simulated room, not a published method.

const BOTTOM = 0.1; // share of the readings below it
const ENOUGH = 0.8; // share of the expected samples, common practice: under it "not enough data"
const LEAST_MARGIN = 0.7; // K above set point, ours, tried on a simulated room
// Common practice, no source.
const GOOD_DAYS = 14;
const ROOM_FOR_CHANCE = 0.2; // K above the highest that good days showed
const HIGHEST = 0.995; // percentile of good days
const BUSY = 0.9; // running share

/** The windows, in minutes, of the rules A (quick), B (sure) and E (running share). */
export const DRIFT_WINDOWS = { A: 120, B: 180, E: 180 } as const;

/**
 * Bottom of the cycle: the 10th percentile of the readings of the last `windowMinutes` up to `now`.
 * null, not enough data, under 80 % of the samples expected at one each `everyMinutes`.
 * @throws RangeError for a window or a step outside 1..1440 min
 */
export function cycleBottom(
  readings: readonly MaybeTemperature[],
  now: Instant,
  {
    windowMinutes,
    everyMinutes,
  }: { readonly windowMinutes: number; readonly everyMinutes: number },
): Celsius | null {
  expectRange('window', windowMinutes, 1, 1440, 'min');
  expectRange('time between samples', everyMinutes, 0.01, 1440, 'min');
  const known: number[] = [];
  for (const { t, value } of readings) {
    if (t > now - windowMinutes * MINUTE && t <= now && value !== null) known.push(value);
  }
  const expected = Math.max(1, Math.floor(windowMinutes / everyMinutes));
  return known.length < ENOUGH * expected ? null : celsius(percentile(known, BOTTOM));
}

/**
 * How far above set point this room's bottom may lie, from the bottoms that rule A or B found in
 * good days: the larger of 0.7 K and their 99.5th percentile + 0.2 K above set point. null, not
 * known yet, under 14 good days; use 0.7 K until then.
 * @throws RangeError for a set point outside -30..40 °C
 */
export function fitDriftMargin(
  bottoms: readonly number[],
  setPoint: number,
  goodDays: number,
): Kelvin | null {
  expectRange('set point', setPoint, -30, 40, '°C');
  if (goodDays < GOOD_DAYS || bottoms.length === 0) return null;
  const highest = percentile(bottoms, HIGHEST) - setPoint;
  return kelvin(Math.max(LEAST_MARGIN, highest + ROOM_FOR_CHANCE));
}

export type DriftVerdict = 'alarm' | 'normal' | 'unknown' | 'suspended';

export type CycleDrift = {
  readonly A: DriftVerdict;
  readonly B: DriftVerdict;
  readonly E: DriftVerdict;
  /** Bottoms over the windows of A and B, °C; null for not enough data. */
  readonly bottomA: Celsius | null;
  readonly bottomB: Celsius | null;
  /** What they are held against, °C. */
  readonly limit: Celsius;
};

/**
 * Whether a room that still cycles has lost hold of its set point.
 *
 *   A  bottom of the last 120 minutes above set point + margin: the quick one
 *   B  the same over 180 minutes: slower, and false about a tenth as often
 *   E  compressor running over 90 % of 180 minutes: capacity fading
 *
 * With a differential of ±1 K the bottom sits about 0.8 K below set point, so A and B see a shift of
 * 1.5 K and more. While power is off by plan all three are suspended: go by the time to the limit.
 * @param margin this room's own (fitDriftMargin), K; 0.7 when not given
 * @param runningShare of the compressor over the last 180 minutes, 0..1; null for not known
 * @throws RangeError for a set point outside -30..40 °C, a margin outside 0..20 K
 */
export function cycleDrift(
  readings: readonly MaybeTemperature[],
  now: Instant,
  {
    setPoint,
    everyMinutes,
    margin = LEAST_MARGIN,
    runningShare = null,
    plannedOff = false,
  }: {
    readonly setPoint: number;
    readonly everyMinutes: number;
    readonly margin?: number;
    readonly runningShare?: number | null;
    readonly plannedOff?: boolean;
  },
): CycleDrift {
  expectRange('set point', setPoint, -30, 40, '°C');
  expectRange('margin', margin, 0, 20, 'K');
  const limit = celsius(setPoint + margin);
  const bottomA = cycleBottom(readings, now, { windowMinutes: DRIFT_WINDOWS.A, everyMinutes });
  const bottomB = cycleBottom(readings, now, { windowMinutes: DRIFT_WINDOWS.B, everyMinutes });
  const judge = (value: number | null, most: number): DriftVerdict =>
    plannedOff ? 'suspended' : value === null ? 'unknown' : value > most ? 'alarm' : 'normal';
  if (runningShare !== null) expectRange('running share', runningShare, 0, 1, '');
  return {
    A: judge(bottomA, limit),
    B: judge(bottomB, limit),
    E: judge(runningShare, BUSY),
    bottomA,
    bottomB,
    limit,
  };
}
