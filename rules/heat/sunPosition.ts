const RADIANS = Math.PI / 180;
const J2000 = 946_728_000_000; // ms since 1970 at 2000-01-01 12:00 UTC
const CENTURY = 36_525 * 86_400_000; // ms

/**
 * Declination of the sun (radians) and equation of time (minutes; apparent less mean) at an
 * instant. Good to some seconds of time between 1950 and 2050.
 *
 * Source: Meeus 1998, Astronomical Algorithms, 2nd ed., ch. 25 (low accuracy) and eq. 28.3;
 * the difference between UTC and dynamical time, about a minute, does not show at this accuracy.
 */
export function sunPosition(ms: number): { declination: number; equationOfTime: number } {
  const T = (ms - J2000) / CENTURY;
  const L0 = (280.46646 + T * (36000.76983 + T * 0.0003032)) * RADIANS; // mean longitude
  const M = (357.52911 + T * (35999.05029 - T * 0.0001537)) * RADIANS; // mean anomaly
  const e = 0.016708634 - T * (0.000042037 + T * 0.0000001267); // eccentricity
  const centre =
    (1.914602 - T * (0.004817 + T * 0.000014)) * Math.sin(M) +
    (0.019993 - T * 0.000101) * Math.sin(2 * M) +
    0.000289 * Math.sin(3 * M);
  const node = (125.04 - 1934.136 * T) * RADIANS;
  const apparent = L0 + (centre - 0.00569 - 0.00478 * Math.sin(node)) * RADIANS;
  const obliquity =
    (23.4392911 - T * (0.0130042 + T * 0.000000164) + 0.00256 * Math.cos(node)) * RADIANS;

  const y = Math.tan(obliquity / 2) ** 2;
  const equation =
    y * Math.sin(2 * L0) -
    2 * e * Math.sin(M) +
    4 * e * y * Math.sin(M) * Math.cos(2 * L0) -
    0.5 * y * y * Math.sin(4 * L0) -
    1.25 * e * e * Math.sin(2 * M);
  return {
    declination: Math.asin(Math.sin(obliquity) * Math.sin(apparent)),
    equationOfTime: (4 * equation) / RADIANS,
  };
}
