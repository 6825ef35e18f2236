import { ZERO_CELSIUS } from '../air/index.ts';
import { expectRange } from '../expectRange.ts';
import { type MaybeTemperature, walkSegments } from '../heat/index.ts';
import { orUnknown } from '../orUnknown.ts';
import { medianInterval } from '../statistics/index.ts';
import { type Celsius, celsius, MINUTE, type Probability, probability } from '../units.ts';

// Activation energy over the gas constant: 83.144 kJ/mol over 8.3144 J/(mol K).
// Source: USP <1160> and <1079>; ICH Q1A for the definition. Set for medicines, not produce.
const ACTIVATION = 10_000; // K

const ENOUGH_KNOWN = 0.9; // share of time, common practice: under it no value is given
const GAP_STEPS = 3; // ours: more than three usual steps without a reading is a gap

/**
 * One temperature that weighs warm spells more than the plain mean does: for comparing weeks or
 * lots, and no verdict on safety. Leave unknown time out, and do not trust it under 90 % known;
 * meanKineticOfReadings sees to both.
 *
 * Source: USP <1160>, ICH Q1A; Haynes 1971, J. Pharm. Sci. 60:927 (from memory).
 * @param weights time each temperature stands for, in any one unit; equal when not given
 * @param activation activation energy over the gas constant, K; activationOf gives a crop's
 * @throws RangeError for an empty list, temperatures outside -60..80 °C, or weights not above 0
 */
export function meanKineticTemperature(
  temperatures: readonly number[],
  weights?: readonly number[],
  activation: number = ACTIVATION,
): Celsius {
  expectRange('number of temperatures', temperatures.length, 1, Number.MAX_SAFE_INTEGER, '');
  expectRange('activation energy over the gas constant', activation, 100, 100_000, 'K');
  if (weights !== undefined) {
    expectRange('number of weights', weights.length, temperatures.length, temperatures.length, '');
  }
  let warmest = Number.NEGATIVE_INFINITY;
  for (const temperature of temperatures) {
    expectRange('temperature', temperature ?? Number.NaN, -60, 80, '°C');
    warmest = Math.max(warmest, temperature);
  }
  // Against the warmest, so that exp(-10000 / 276) does not lose its digits.
  const reference = activation / (warmest + ZERO_CELSIUS);
  let sum = 0;
  let total = 0;
  temperatures.forEach((temperature, index) => {
    const weight = weights?.[index] ?? 1;
    expectRange('weight', weight, Number.MIN_VALUE, Number.MAX_VALUE, '');
    sum += weight * Math.exp(reference - activation / (temperature + ZERO_CELSIUS));
    total += weight;
  });
  return celsius(activation / (reference - Math.log(sum / total)) - ZERO_CELSIUS);
}

/**
 * The same of a series: each reading stands for half the time to its neighbours, unknown time is
 * left out and said. `temperature` is null under 90 % known.
 * @param gapMaxMinutes a longer time between readings is unknown; three usual steps when not given
 * @throws RangeError for readings not in order of time
 */
export function meanKineticOfReadings(
  readings: readonly MaybeTemperature[],
  { gapMaxMinutes }: { readonly gapMaxMinutes?: number | undefined } = {},
): { readonly temperature: Celsius | null; readonly knownShare: Probability } {
  const gapMax = gapMaxMinutes ?? (GAP_STEPS * (medianInterval(readings) ?? 0)) / MINUTE;
  const from = readings[0]?.t ?? 0;
  const to = readings.at(-1)?.t ?? from;
  const temperatures: number[] = [];
  const weights: number[] = [];
  const covered = walkSegments(readings, gapMax, from, to, (length, start, end) => {
    temperatures.push(start, end);
    weights.push(length / 2, length / 2);
  });
  const knownShare = probability(to > from ? covered / (to - from) : 0);
  const enough = knownShare >= ENOUGH_KNOWN;
  return { temperature: enough ? meanKineticTemperature(temperatures, weights) : null, knownShare };
}

/**
 * Activation energy over the gas constant, K, that makes a rate grow `q10` times from one
 * temperature to one 10 K warmer: 8,497 K for 3 from 0 to 10 °C, against 10,000 K of the
 * medicines' rule.
 * Source: Arrhenius equation.
 * @throws RangeError for q10 outside 1..10 or a temperature outside -60..70 °C
 */
export const activationOf = orUnknown(function activationOf(q10: number, from: number): number {
  expectRange('q10', q10, 1, 10, '');
  expectRange('temperature', from, -60, 70, '°C');
  const kelvins = from + ZERO_CELSIUS;
  return Math.log(q10) / (1 / kelvins - 1 / (kelvins + 10));
});
