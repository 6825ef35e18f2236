import { expectRange } from '../expectRange.ts';
import { type MaybeTemperature, walkSegments } from '../heat/index.ts';
import { orUnknown } from '../orUnknown.ts';
import { median } from '../statistics/index.ts';
import { MINUTE, type Probability, probability } from '../units.ts';

const HALF = 0.5; // of the running power; common practice
const DEAD_BAND = 0.2; // K a turn must exceed to be one; common practice
const SMOOTHED = 5; // minutes of the running median; common practice

/** A reading of power, W, or current, A; null where not known. */
export type PowerReading = MaybeTemperature;

export type RunningShare = {
  /** 0..1; null when nothing is known. */
  readonly share: Probability | null;
  /** Share of the time from first to last reading that is known. */
  readonly knownShare: Probability;
  /** By the temperature alone. */
  readonly estimated: boolean;
};

/**
 * Share of time a compressor ran: its power or current above half of what it draws when running.
 * Each reading stands until the next one, up to the gap.
 * Common practice, no source.
 * @param running power or current of the running compressor, in the readings' unit
 * @throws RangeError for readings not in order of time, or running not above 0
 */
export function dutyFromPower(
  readings: readonly PowerReading[],
  { running, gapMaxMinutes }: { readonly running: number; readonly gapMaxMinutes: number },
): RunningShare {
  expectRange('power when running', running, Number.MIN_VALUE, 1_000_000, '');
  const all = (readings.at(-1)?.t ?? 0) - (readings[0]?.t ?? 0);
  let known = 0;
  let ran = 0;
  readings.forEach(({ t, value }, index) => {
    const next = readings[index + 1]?.t ?? t;
    const length = next - t;
    if (length < 0) {
      throw new RangeError(`Expected readings in order of time, got ${next} after ${t}`);
    }
    if (value === null || length > gapMaxMinutes * MINUTE) return;
    known += length;
    if (value > HALF * running) ran += length;
  });
  return {
    share: known === 0 ? null : probability(ran / known),
    knownShare: probability(all === 0 ? 0 : known / all),
    estimated: false,
  };
}

/**
 * The same guessed from temperature alone: the share of time that the air falls between its turning
 * points, on a 5-minute running median, turns of 0.2 K and less left out. null without two turns.
 * Common practice, no source.
 * @throws RangeError for readings not in order of time
 */
export function dutyFromTemperature(
  readings: readonly MaybeTemperature[],
  { gapMaxMinutes }: { readonly gapMaxMinutes: number },
): RunningShare {
  const all = (readings.at(-1)?.t ?? 0) - (readings[0]?.t ?? 0);
  const covered = walkSegments(
    readings,
    gapMaxMinutes,
    Number.NEGATIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    () => undefined,
  );
  let falling = 0;
  let known = 0;
  for (const run of runsWithoutGap(readings, gapMaxMinutes * MINUTE)) {
    const turns = turningPoints(smoothed(run));
    turns.forEach((turn, index) => {
      const next = turns[index + 1];
      if (next === undefined) return;
      known += next.t - turn.t;
      if (next.value < turn.value) falling += next.t - turn.t;
    });
  }
  return {
    share: known === 0 ? null : probability(falling / known),
    knownShare: probability(all === 0 ? 0 : covered / all),
    estimated: true,
  };
}

type Known = { readonly t: number; readonly value: number };

function runsWithoutGap(readings: readonly MaybeTemperature[], gapMax: number): Known[][] {
  const runs: Known[][] = [[]];
  for (const { t, value } of readings) {
    const run = runs.at(-1) as Known[];
    const last = run.at(-1);
    if (value === null) runs.push([]);
    else if (last !== undefined && t - last.t > gapMax) runs.push([{ t, value }]);
    else run.push({ t, value });
  }
  return runs;
}

const smoothed = (run: readonly Known[]): Known[] =>
  run.map(({ t }) => {
    const near = run.filter((other) => Math.abs(other.t - t) <= (SMOOTHED / 2) * MINUTE);
    return { t, value: median(near.map(({ value }) => value)) };
  });

/** Tops and bottoms in turn; the first and last stretches are cut off and left out. */
function turningPoints(run: readonly Known[]): Known[] {
  const turns: Known[] = [];
  let top = run[0];
  let bottom = run[0];
  let rising: boolean | null = null;
  for (const point of run) {
    if (top === undefined || bottom === undefined) break;
    if (point.value > top.value) top = point;
    if (point.value < bottom.value) bottom = point;
    if (rising !== false && top.value - point.value > DEAD_BAND) {
      if (rising === true) turns.push(top);
      rising = false;
      bottom = point;
    } else if (rising !== true && point.value - bottom.value > DEAD_BAND) {
      if (rising === false) turns.push(bottom);
      rising = true;
      top = point;
    }
  }
  return turns;
}

/** Energy of a day, kWh, from the power of the running unit, W, and its running share, 0..1. */
export const dailyEnergy = orUnknown(function dailyEnergy(watts: number, share: number): number {
  expectRange('power when running', watts, 0, 1_000_000, 'W');
  expectRange('running share', share, 0, 1, '');
  return (watts * share * 24) / 1000;
});
