import { HOUR, type Instant } from '../units.ts';
import type { StationHour } from './parseIsdLite.ts';

// Common practice, no source.
const CLEAREST_CODES = 2; // sky codes 0 to 2: clear to scattered
const CALM = 2; // m/s

/**
 * Whether a night was clear and calm at a station, for learning from it: sky code 0 to 2 and wind
 * of 2 m/s or less at every hour from sunset to dawn. One hour that was not says no; null when no
 * hour did but one is missing or incomplete.
 */
export function isClearCalmAtStation(
  hours: readonly StationHour[],
  sunset: Instant,
  dawn: Instant,
): boolean | null {
  const night = hours.filter(({ t }) => t >= sunset && t <= dawn);
  if (night.some(({ sky, wind }) => (sky ?? 0) > CLEAREST_CODES || (wind ?? 0) > CALM))
    return false;
  const known = new Set(
    night.flatMap(({ t, sky, wind }) => (sky === null || wind === null ? [] : [t])),
  );
  for (let t = Math.ceil(sunset / HOUR) * HOUR; t <= dawn; t += HOUR) {
    if (!known.has(t as Instant)) return null;
  }
  return known.size > 0 ? true : null;
}
