import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { type Instant, instant, MINUTE } from '../units.ts';
import { sunPosition } from './sunPosition.ts';

const RADIANS = Math.PI / 180;
const DAY = 86_400_000; // ms
const HORIZON = 90.833; // ° from the zenith: upper edge of the disc, with mean refraction
const PASSES = 3; // the sun moves a little between noon and the event; the third changes < 1 s

/**
 * Sunrise and sunset around the local solar noon nearest to `ms`; each null where the sun does not
 * cross the horizon that day. Within seconds of an almanac for a level horizon; hills and unusual
 * refraction matter more.
 * @param lat degrees, south negative
 * @param lon degrees, west negative
 * @throws RangeError outside ±90 and ±180
 */
export const sunTimes = orUnknown(function sunTimes(
  ms: Instant,
  lat: number,
  lon: number,
): { readonly rise: Instant | null; readonly set: Instant | null } {
  expectRange('latitude', lat, -90, 90, '°');
  expectRange('longitude', lon, -180, 180, '°');
  expectRange('time', ms, -8.64e15, 8.64e15, 'ms');
  const noonOffset = (720 - 4 * lon - sunPosition(ms).equationOfTime) * MINUTE;
  const midnight = Math.round((ms - noonOffset) / DAY) * DAY;
  return {
    rise: crossing(midnight, midnight + noonOffset, lat, lon, -1),
    set: crossing(midnight, midnight + noonOffset, lat, lon, 1),
  };
});

// Hour angle from the altitude of the horizon: Meeus 1998, ch. 15, iterated at the event.
function crossing(
  midnight: number,
  noon: number,
  lat: number,
  lon: number,
  side: -1 | 1,
): Instant | null {
  const phi = lat * RADIANS;
  let at = noon;
  for (let pass = 0; pass < PASSES; pass += 1) {
    const { declination, equationOfTime } = sunPosition(at);
    const cosine =
      Math.cos(HORIZON * RADIANS) / (Math.cos(phi) * Math.cos(declination)) -
      Math.tan(phi) * Math.tan(declination);
    if (!(Math.abs(cosine) <= 1)) return null;
    const hourAngle = Math.acos(cosine) / RADIANS;
    at = midnight + (720 - 4 * lon - equationOfTime + side * 4 * hourAngle) * MINUTE;
  }
  return instant(Math.round(at));
}
