import { orUnknown } from '../orUnknown.ts';
import type { Celsius, Percent } from '../units.ts';
import { vapourPressureDeficit } from './vapourPressureDeficit.ts';

// Common practice, no source. Between the two temperatures neither way of judging is settled.
const BY_LEAVES_BELOW = 12; // °C; an unheated house rarely reaches 0.5 kPa below it
const BY_DEFICIT_ABOVE = 15; // °C
const TOO_DAMP_BELOW = 0.3; // kPa, by day
const TOO_DRY_ABOVE = 1.2; // kPa, by day

/** How the drying power of the day's air suits a crop. */
export type DryingComfort = 'judge-by-leaves' | 'between' | 'too-damp' | 'comfortable' | 'too-dry';

/**
 * Whether a house's air dries enough by day, and whether its deficit says so at all: below 12 °C
 * only leaves that are dry by mid-morning do (see dryByMidMorning in wetness/), above 15 °C
 * 0.3 to 1.2 kPa is comfortable. Null for a null.
 * @throws RangeError outside -30..60 °C or above 0..105 %
 */
export const dryingComfort = orUnknown(function dryingComfort(
  air: Celsius,
  humidity: Percent,
): DryingComfort {
  const deficit = vapourPressureDeficit(air, humidity);
  if (air < BY_LEAVES_BELOW) return 'judge-by-leaves';
  if (air <= BY_DEFICIT_ABOVE) return 'between';
  if (deficit < TOO_DAMP_BELOW) return 'too-damp';
  return deficit > TOO_DRY_ABOVE ? 'too-dry' : 'comfortable';
});
