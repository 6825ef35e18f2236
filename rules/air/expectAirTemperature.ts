import { expectRange } from '../expectRange.ts';
import type { Celsius } from '../units.ts';

// Where a shielded probe on a garden can be; the formulas here hold well inside it.
const COLDEST = -30; // ours
const HOTTEST = 60; // ours

/** Refuses an air temperature outside -30..60 °C. */
export function expectAirTemperature(air: Celsius) {
  expectRange('air temperature', air, COLDEST, HOTTEST, '°C');
}

/** Whether expectAirTemperature would let it pass. */
export const acceptsAirTemperature = (air: number) => air >= COLDEST && air <= HOTTEST;
