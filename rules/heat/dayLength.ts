import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { type Hours, hours } from '../units.ts';

const RADIANS = Math.PI / 180;
const UPPER_LIMB = 0.8333; // ° below the horizon: upper edge of the disc, with refraction

/**
 * Hours between sunrise and sunset. For light (growth stands still under some 10 h); clock times
 * come from sunTimes, from which this differs by up to 5 minutes at 45° and 8 at 60°, in spring and
 * autumn.
 *
 * Source: the CBM model of Forsythe, Rykiel, Stahl, Wu & Schoolfield 1995, Ecol. Modelling 80:87.
 * @param latitude degrees, south negative
 * @param dayOfYear 1..366; 366 is taken as 365
 * @param horizon how far below the horizon the sun's centre is when day ends, °: 0.8333 for sunset
 *   (the default), 0 for the centre on the horizon, 6 for civil twilight
 * @throws RangeError outside those
 */
export const dayLength = orUnknown(function dayLength(
  latitude: number,
  dayOfYear: number,
  horizon: number = UPPER_LIMB,
): Hours {
  expectRange('latitude', latitude, -90, 90, '°');
  expectRange('day of the year', dayOfYear, 1, 366, '');
  expectRange('depth below the horizon', horizon, -18, 18, '°');
  const day = Math.min(dayOfYear, 365);
  const orbit = 0.2163108 + 2 * Math.atan(0.9671396 * Math.tan(0.0086 * (day - 186)));
  const declination = Math.asin(0.39795 * Math.cos(orbit));
  const phi = latitude * RADIANS;
  const cosine =
    (Math.sin(horizon * RADIANS) + Math.sin(phi) * Math.sin(declination)) /
    (Math.cos(phi) * Math.cos(declination));
  // Beyond ±1 the sun stays up, or down, all day.
  return hours(24 - (24 / Math.PI) * Math.acos(Math.max(-1, Math.min(1, cosine))));
});
