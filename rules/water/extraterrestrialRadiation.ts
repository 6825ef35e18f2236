import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { type Hours, hours } from '../units.ts';

// Allen, Pereira, Raes & Smith 1998, Crop Evapotranspiration, FAO Irrigation and Drainage Paper
// 56, equations 21 to 25 and 34.

const SOLAR_CONSTANT = 0.082; // MJ m⁻² min⁻¹
const MINUTES = 24 * 60;
const RADIANS = Math.PI / 180;

/** Inverse relative distance between earth and sun (eq. 23). */
const distance = (day: number) => 1 + 0.033 * Math.cos((2 * Math.PI * day) / 365);
/** Solar declination, radians (eq. 24). */
const declinationOf = (day: number) => 0.409 * Math.sin((2 * Math.PI * day) / 365 - 1.39);
/** Sunset hour angle, radians (eq. 25); held where the sun stays up or down all day. */
const sunsetAngle = (phi: number, declination: number) =>
  Math.acos(Math.max(-1, Math.min(1, -Math.tan(phi) * Math.tan(declination))));

/**
 * Extraterrestrial radiation Ra on a level plane, MJ m⁻² d⁻¹.
 *
 * Source: FAO-56 eq. 21.
 * @param latitude degrees, south negative
 * @param dayOfYear 1..366
 * @throws RangeError outside those
 */
export const extraterrestrialRadiation = orUnknown(function extraterrestrialRadiation(
  latitude: number,
  dayOfYear: number,
): number {
  expectPlaceAndDay(latitude, dayOfYear);
  const phi = latitude * RADIANS;
  const declination = declinationOf(dayOfYear);
  const angle = sunsetAngle(phi, declination);
  const path =
    angle * Math.sin(phi) * Math.sin(declination) +
    Math.cos(phi) * Math.cos(declination) * Math.sin(angle);
  return Math.max(0, (MINUTES / Math.PI) * SOLAR_CONSTANT * distance(dayOfYear) * path);
});

/**
 * Daylight hours N as water balances take them: centre of the disc, no refraction. For light on
 * crops see dayLength.
 *
 * Source: FAO-56 eq. 34.
 * @throws RangeError as extraterrestrialRadiation
 */
export const daylightHours = orUnknown(function daylightHours(
  latitude: number,
  dayOfYear: number,
): Hours {
  expectPlaceAndDay(latitude, dayOfYear);
  const angle = sunsetAngle(latitude * RADIANS, declinationOf(dayOfYear));
  return hours((24 / Math.PI) * angle);
});

function expectPlaceAndDay(latitude: number, dayOfYear: number) {
  expectRange('latitude', latitude, -90, 90, '°');
  expectRange('day of the year', dayOfYear, 1, 366, '');
}
