import { HOUR, MINUTE } from '../units.ts';
import type { MaybeTemperature } from './temperatureReading.ts';

// What no thermometer in the garden can mean; common practice, no source. All are settings.
const COLDEST = -40; // °C
const WARMEST = 60; // °C
const JUMP = 8; // K, outdoors
const JUMP_MINUTES = 5;
const STUCK_HOURS = 6; // outdoors, where no air keeps one temperature for so long

export type Screened = {
  /** The same readings; null stands where one was refused. */
  readonly readings: readonly MaybeTemperature[];
  readonly refused: { readonly range: number; readonly jump: number; readonly stuck: number };
};

/**
 * Refuses readings before they are integrated: outside the range; and of a probe outdoors, those
 * that jump from any accepted in the five minutes before, and every one of a run that kept one
 * value for more than six hours. A refused reading becomes unknown, never a number.
 */
export function screenReadings(
  readings: readonly MaybeTemperature[],
  rule: {
    readonly outdoors: boolean;
    readonly coldest?: number | undefined;
    readonly warmest?: number | undefined;
    readonly jump?: number | undefined;
    readonly jumpMinutes?: number | undefined;
    readonly stuckHours?: number | undefined;
  },
): Screened {
  const { outdoors, coldest = COLDEST, warmest = WARMEST, jump = JUMP } = rule;
  const window = (rule.jumpMinutes ?? JUMP_MINUTES) * MINUTE;
  const refused = { range: 0, jump: 0, stuck: 0 };
  const screened: { t: MaybeTemperature['t']; value: number | null }[] = [];
  let first = 0; // of the readings within the last five minutes
  for (const { t, value } of readings) {
    while (first < screened.length && t - (screened[first]?.t ?? t) > window) first += 1;
    let kept = value;
    if (value !== null && !(value >= coldest && value <= warmest)) {
      refused.range += 1;
      kept = null;
    } else if (value !== null && outdoors) {
      const near = screened.slice(first);
      if (near.some((each) => each.value !== null && Math.abs(value - each.value) > jump)) {
        refused.jump += 1;
        kept = null;
      }
    }
    screened.push({ t, value: kept });
  }
  if (outdoors) refused.stuck = refuseStuck(screened, (rule.stuckHours ?? STUCK_HOURS) * HOUR);
  return { readings: screened, refused };
}

// Reading on, unknown values neither end a run nor count in it.
function refuseStuck(readings: { t: number; value: number | null }[], longest: number): number {
  let count = 0;
  let run: { t: number; value: number | null }[] = [];
  const end = () => {
    const begins = run[0]?.t ?? 0;
    if ((run.at(-1)?.t ?? 0) - begins > longest) {
      count += run.length;
      for (const each of run) each.value = null;
    }
    run = [];
  };
  for (const reading of readings) {
    if (reading.value === null) continue;
    if (run[0] !== undefined && run[0].value !== reading.value) end();
    run.push(reading);
  }
  end();
  return count;
}
