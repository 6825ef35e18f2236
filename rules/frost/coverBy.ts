import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { HOUR, type Instant, instant, MINUTE } from '../units.ts';

const BEFORE_SUNSET = HOUR; // common practice, no source: later a cover traps less of the soil's heat

/**
 * When covers must be on: so long before the threshold is crossed as the work takes, and an hour
 * before sunset at the latest. `crossing` null: not known when, so an hour before sunset.
 * @throws RangeError for work of less than none or more than a day
 */
export function coverBy(sunset: Instant, crossing: Instant | null, leadMinutes: number): Instant {
  expectRange('time the work takes', leadMinutes, 0, 1440, 'min');
  const latest = sunset - BEFORE_SUNSET;
  return instant(crossing === null ? latest : Math.min(latest, crossing - leadMinutes * MINUTE));
}

const NEAR = 1; // K above the threshold; common practice, no source
const WINDY = 2; // m/s; FAO 2005: at less the night is calm

/**
 * Moving-air (advective) frost, which none of the night's curves foresee and covers hold off badly:
 * the air is within a kelvin of the threshold, or below it, and there is wind. A plain alarm.
 * @throws RangeError for temperatures outside ±100 °C or a wind outside 0..100 m/s
 */
export const advectiveFrost = orUnknown(function advectiveFrost(
  air: number,
  wind: number,
  threshold: number,
): boolean {
  expectRange('air temperature', air, -100, 100, '°C');
  expectRange('wind', wind, 0, 100, 'm/s');
  expectRange('threshold', threshold, -100, 100, '°C');
  return air < threshold + NEAR && wind >= WINDY;
});
