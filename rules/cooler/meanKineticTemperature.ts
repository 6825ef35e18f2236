import { ZERO_CELSIUS } from '../air/index.ts';
import { expectRange } from '../expectRange.ts';
import { type Celsius, celsius } from '../units.ts';

// Activation energy over the gas constant: 83.144 kJ/mol over 8.3144 J/(mol K).
// Source: USP <1160> and <1079>; ICH Q1A for the definition. Set for medicines, not produce.
const ACTIVATION = 10_000; // K

/**
 * One temperature that weighs warm spells more than the plain mean does: for comparing weeks or
 * lots, and no verdict on safety. Leave unknown time out, and do not trust it under 90 % known.
 * @param weights time each temperature stands for, in any one unit; equal when not given
 * @throws RangeError for an empty list, temperatures outside -60..80 °C, or weights not above 0
 */
export function meanKineticTemperature(
  temperatures: readonly number[],
  weights?: readonly number[],
): Celsius {
  expectRange('number of temperatures', temperatures.length, 1, Number.MAX_SAFE_INTEGER, '');
  if (weights !== undefined) {
    expectRange('number of weights', weights.length, temperatures.length, temperatures.length, '');
  }
  let warmest = Number.NEGATIVE_INFINITY;
  for (const temperature of temperatures) {
    expectRange('temperature', temperature, -60, 80, '°C');
    warmest = Math.max(warmest, temperature);
  }
  // Against the warmest, so that exp(-10000 / 276) does not lose its digits.
  const reference = ACTIVATION / (warmest + ZERO_CELSIUS);
  let sum = 0;
  let total = 0;
  temperatures.forEach((temperature, index) => {
    const weight = weights?.[index] ?? 1;
    expectRange('weight', weight, Number.MIN_VALUE, Number.MAX_VALUE, '');
    sum += weight * Math.exp(reference - ACTIVATION / (temperature + ZERO_CELSIUS));
    total += weight;
  });
  return celsius(ACTIVATION / (reference - Math.log(sum / total)) - ZERO_CELSIUS);
}
