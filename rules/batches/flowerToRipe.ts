import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { type DegreeDays, degreeDaysOf } from '../units.ts';

// Common practice, no source; 24 to 44 days have been seen, by cultivar and warmth (Chandler 2004).
const DAYS = 30;
const BASE = 3; // °C

/**
 * Heat units from a strawberry's open flower to ripe fruit, until ten tagged flowers of the patch
 * have told: thirty days at the mean temperature above 3 °C.
 * @throws RangeError for a mean outside -10..40 °C
 */
export const flowerToRipe = orUnknown(function flowerToRipe(meanTemperature: number): DegreeDays {
  expectRange('mean temperature', meanTemperature, -10, 40, '°C');
  return degreeDaysOf(DAYS * Math.max(0, meanTemperature - BASE));
});
