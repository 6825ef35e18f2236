import { ZERO_CELSIUS } from '../air/index.ts';
import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { type Percent, percent } from '../units.ts';

/** Salts whose moist slurry keeps a steady humidity above it. Lithium chloride is harmful. */
export type Salt = 'LiCl' | 'MgCl2' | 'NaCl' | 'KCl' | 'K2SO4';

// % at 5, 20 and 25 °C. Source: Greenspan 1977, J. Res. Nat. Bur. Stand. 81A:89, table 2 (from
// memory; a one-decimal laboratory table agrees but for NaCl at 20 °C, 75.7 there).
const KNOTS = [5, 20, 25] as const; // °C
const TABLE: Readonly<Record<Salt, readonly [number, number, number]>> = {
  LiCl: [11.3, 11.31, 11.3],
  MgCl2: [33.6, 33.07, 32.78],
  NaCl: [75.65, 75.47, 75.29],
  KCl: [87.67, 85.11, 84.34],
  K2SO4: [98.48, 97.59, 97.3],
};

// RH = A exp(B / T), T in kelvin, good to 2 %. Source: Wexler's fit in the CRC Handbook.
const FIT: Readonly<Record<Salt, readonly [a: number, b: number]>> = {
  LiCl: [14.53, -75],
  MgCl2: [29.26, 34],
  NaCl: [69.2, 25],
  KCl: [49.38, 159],
  K2SO4: [86.75, 34],
};

/**
 * Relative humidity over a moist salt slurry in a closed box, straight lines between 5, 20 and 25 °C.
 * Source: Greenspan 1977, table 2.
 * @throws RangeError for temperatures outside 5..25 °C
 */
export const saltHumidity = orUnknown(function saltHumidity(
  salt: Salt,
  temperature: number,
): Percent {
  expectRange('temperature', temperature, 5, 25, '°C');
  const [cold, middle, warm] = TABLE[salt];
  const [t5, t20, t25] = KNOTS;
  return percent(
    temperature <= t20
      ? cold + ((middle - cold) * (temperature - t5)) / (t20 - t5)
      : middle + ((warm - middle) * (temperature - t20)) / (t25 - t20),
  );
});

/**
 * The same by Wexler's fit, to hold the table against: within 0.25 % of it at 20 °C.
 * Source: CRC Handbook of Chemistry and Physics, constant humidity solutions.
 * @throws RangeError for temperatures outside 5..35 °C
 */
export const saltHumidityFit = orUnknown(function saltHumidityFit(
  salt: Salt,
  temperature: number,
): Percent {
  expectRange('temperature', temperature, 5, 35, '°C');
  const [a, b] = FIT[salt];
  return percent(a * Math.exp(b / (temperature + ZERO_CELSIUS)));
});

// What a cheap probe may be off, %. Common practice, no source.
const MAY_BE_OFF = { NaCl: 3, K2SO4: 5 } as const;

/**
 * Whether a humidity probe passes over one salt: within 3 % over NaCl, 5 % over K2SO4. Leave it an
 * hour, at steady temperature, not touching the slurry.
 * @throws RangeError for humidity outside 0..110 % or temperatures outside 5..25 °C
 */
export const humidityProbePasses = orUnknown(function humidityProbePasses(
  salt: keyof typeof MAY_BE_OFF,
  shown: number,
  temperature: number,
): boolean {
  expectRange('relative humidity', shown, 0, 110, '%');
  return Math.abs(shown - saltHumidity(salt, temperature)) <= MAY_BE_OFF[salt];
});
