import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { type Celsius, celsius } from '../units.ts';

// The line through the ten example nights of Snyder & de Melo-Abreu 2005, Frost Protection, FAO
// Env. & Nat. Res. Series 10, vol. 1 (secondary copy): another farm's, so a shape and no more.
const INTERCEPT = -5.908549; // °C
const SLOPE = 0.502812;

/**
 * What a clear, calm night looks like while ten own nights are not in yet: "untrained", to be shown
 * as such and never with a probability.
 * @param evening temperature two hours after sunset, °C
 * @throws RangeError outside -60..60 °C
 */
export const untrainedLow = orUnknown(function untrainedLow(evening: number): Celsius {
  expectRange('evening temperature', evening, -60, 60, '°C');
  return celsius(INTERCEPT + SLOPE * evening);
});
