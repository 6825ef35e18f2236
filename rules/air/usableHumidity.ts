import { type Percent, percent } from '../units.ts';

// Probes in damp air overshoot; up to here it still means "saturated", beyond it is a fault.
const OVERSHOOT = 105; // ours

/** Whether a probe can mean this humidity. */
export const acceptsHumidity = (humidity: number) => humidity > 0 && humidity <= OVERSHOOT;

/**
 * The humidity to reckon with: above 100 and up to 105 % is read as 100.
 * @throws RangeError for 0 % (no probe can mean it), below, above 105, or not a number
 */
export function usableHumidity(humidity: Percent): Percent {
  if (!acceptsHumidity(humidity)) {
    throw new RangeError(
      `Expected relative humidity from above 0 to ${OVERSHOOT} %, got ${humidity}`,
    );
  }
  return humidity > 100 ? percent(100) : humidity;
}
