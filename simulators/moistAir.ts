// Buck 1981, "New equations for computing vapor pressure and enhancement factor", J. Appl. Meteor.
// 20, 1527-1532: curve e_w1 over liquid water, made for -20 to 50 °C (0.06 % there), without the
// enhancement factor. Humidity is by convention over water below zero too.
const SCALE = 6.1121; // hPa
const SLOPE = 17.502; // dimensionless
const SHIFT = 240.97; // °C

/** hPa over liquid water at `temperature` °C. */
export const saturationPressure = (temperature: number) =>
  SCALE * Math.exp((SLOPE * temperature) / (SHIFT + temperature));

/** °C at which `pressure` hPa of vapour saturates: the same curve, read backwards. */
export function dewPointOf(pressure: number): number {
  const exponent = Math.log(pressure / SCALE);
  return (SHIFT * exponent) / (SLOPE - exponent);
}

// Gas constant of water vapour, J/(kg K): 8.314 / 0.018015.
const VAPOUR_GAS = 461.5;
const ZERO = 273.15; // K

/** kg/m³ of vapour at `pressure` hPa and `temperature` °C (ideal gas). */
export const vapourDensity = (pressure: number, temperature: number) =>
  (100 * pressure) / (VAPOUR_GAS * (temperature + ZERO));

/** hPa of `density` kg/m³ of vapour at `temperature` °C. */
export const vapourPressure = (density: number, temperature: number) =>
  (density * VAPOUR_GAS * (temperature + ZERO)) / 100;

/** kg/m³ of vapour that saturates air of `temperature` °C. */
export const saturationDensity = (temperature: number) =>
  vapourDensity(saturationPressure(temperature), temperature);

/** %RH of air at `temperature` °C holding `pressure` hPa of vapour, at most 100. */
export const humidityOf = (pressure: number, temperature: number) =>
  Math.min(100, (100 * pressure) / saturationPressure(temperature));
