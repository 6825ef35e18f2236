import type { Verdict } from '../disease/index.ts';
import { expectRange } from '../expectRange.ts';
import { HOUR } from '../units.ts';
import {
  type AirRead,
  type Bounds,
  type SignReading,
  type Window,
  wetPieces,
} from '../wetness/index.ts';

// Ours, from no source.
const TASK_LOAD = 3; // °C h in a day
const TASK_ABOVE = 4; // K over the limit, at any moment

export type HeatLoad = {
  /** Degree-hours above the limit, °C h, least and most. */
  readonly degreeHours: Bounds;
  readonly unknownHours: number;
  /** Hottest reading, °C; null without any. */
  readonly hottest: number | null;
  /** Whether the day asks for shade or air: 3 °C h, or 4 K over the limit at any moment. */
  readonly task: Verdict;
};

/**
 * Heat above a crop's limit: the sum of what each reading is over it, times how long it spoke.
 * A gap adds nothing at the least; at the most it was 2 K warmer than its warmer edge.
 * @throws RangeError for readings not in order of time, or a limit outside -30..60 °C
 */
export function heatLoad(
  readings: readonly Pick<AirRead, 't' | 'temperature'>[],
  limit: number,
  day: Window,
  settings: { readonly maxGapMinutes?: number } = {},
): HeatLoad {
  expectRange('heat limit', limit, -30, 60, '°C');
  const signs = readings.map(({ t, temperature }): SignReading => {
    return { t, temperature, sign: temperature === null ? null : 'dry' };
  });
  let [least, most, unknown] = [0, 0, 0];
  let perhapsOver = false;
  let hottest: number | null = null;
  for (const { state, from, to, warmest } of wetPieces(signs, day, settings)) {
    const length = to - from;
    const load = Math.max(0, warmest - limit) * length; // K ms, summed before it is divided
    most += load;
    perhapsOver ||= warmest >= limit + TASK_ABOVE;
    if (state === 'unknown') {
      unknown += length;
      continue;
    }
    least += load;
    hottest = Math.max(hottest ?? warmest, warmest);
  }
  [least, most, unknown] = [least / HOUR, most / HOUR, unknown / HOUR];
  const surely = least >= TASK_LOAD || (hottest !== null && hottest >= limit + TASK_ABOVE);
  const task = surely ? 'yes' : most >= TASK_LOAD || perhapsOver ? 'unknown' : 'no';
  return { degreeHours: [least, most], unknownHours: unknown, hottest, task };
}
