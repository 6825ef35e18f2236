import { expectRange } from '../expectRange.ts';
import { type Celsius, celsius } from '../units.ts';
import { degreeDays } from './degreeDays.ts';
import type { MaybeTemperature } from './temperatureReading.ts';

const STEPS_PER_KELVIN = 10; // 0.1 °C; common practice, no source
const FEWEST = 3; // batches; two agree on some base whatever they are
const MOST_UNKNOWN = 0.15; // share of a batch's time without readings; common practice, no source

/**
 * Base temperature from the readings themselves, for batches that spent time below it or above the
 * upper threshold, where the closed forms of baseTemperature do not hold: every 0.1 °C from `from`
 * to `to`, the one whose heat units vary least in proportion to their mean. null when there are
 * fewer than three batches with readings for 85 % of their time, or no units at any base.
 * @param batches each the readings of one batch from sowing to the stage
 * @throws RangeError for a range upside down or outside -10..30 °C, or readings degreeDays refuses
 */
export function scanBase(
  batches: readonly (readonly MaybeTemperature[])[],
  rule: {
    readonly from: number;
    readonly to: number;
    readonly upper?: number | undefined;
    readonly maxGapMinutes?: number | undefined;
  },
): { readonly base: Celsius; readonly variation: number } | null {
  const { from, to, ...limits } = rule;
  expectRange('lowest base temperature', from, -10, 30, '°C');
  expectRange('highest base temperature', to, from, 30, '°C');
  const known = batches.filter((readings) => {
    const hours = ((readings.at(-1)?.t ?? 0) - (readings[0]?.t ?? 0)) / 3_600_000;
    const { unknownHours } = degreeDays(readings, { lower: from, ...limits });
    return hours > 0 && unknownHours <= MOST_UNKNOWN * hours;
  });
  if (known.length < FEWEST) return null;

  let best: { base: Celsius; variation: number } | null = null;
  const steps = Math.round((to - from) * STEPS_PER_KELVIN);
  for (let step = 0; step <= steps; step += 1) {
    const lower = from + step / STEPS_PER_KELVIN;
    const variation = variationOf(
      known.map((readings) => degreeDays(readings, { lower, ...limits }).degreeDays),
    );
    if (variation < (best?.variation ?? Number.POSITIVE_INFINITY)) {
      best = { base: celsius(lower), variation };
    }
  }
  return best;
}

// Coefficient of variation, n - 1 divisor; not a number, and so never the best, when all are 0.
function variationOf(units: readonly number[]): number {
  const mean = units.reduce((sum, each) => sum + each, 0) / units.length;
  const squares = units.reduce((sum, each) => sum + (each - mean) ** 2, 0);
  return Math.sqrt(squares / (units.length - 1)) / mean;
}
