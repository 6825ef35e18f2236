import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';
import { straightLine, studentQuantile } from '../statistics/index.ts';

// Common practice, no source.
const LEAST_GAP = 3; // K between outside and inside; below it the index says nothing
const FEWEST_DAYS = 10;
const LEAST_SPAN = 5; // K between the mildest and the warmest of those days

/**
 * Energy of a day for each kelvin the room was kept below outside, kWh/(d K), to compare days of
 * different weather. null under 3 K.
 * Common practice, no source.
 * @param day kWh, and the day's mean temperatures, °C
 * @throws RangeError for energy below 0 or temperatures outside -60..80 °C
 */
export const energyIndex = orUnknownField(function energyIndex(day: {
  readonly kilowattHours: number;
  readonly outside: number;
  readonly inside: number;
}): number | null {
  const { kilowattHours, outside, inside } = day;
  expectRange('energy', kilowattHours, 0, 1_000_000, 'kWh');
  expectRange('outside temperature', outside, -60, 80, '°C');
  expectRange('inside temperature', inside, -60, 80, '°C');
  const gap = outside - inside;
  return gap < LEAST_GAP ? null : kilowattHours / gap;
});

export type EnergyLine = {
  /** The envelope's part, kWh/(d K), with its 95 % interval. */
  readonly slope: number;
  readonly slopeLow: number;
  readonly slopeHigh: number;
  /** What does not hang on the weather: doors, produce, fans, defrost; kWh/d. */
  readonly intercept: number;
  /** Residual standard deviation, kWh/d. */
  readonly residualSd: number;
  readonly days: number;
  /** Whether there are the 10 days over 5 K that the line needs. */
  readonly enough: boolean;
};

/**
 * Daily energy over outside less inside temperature, by least squares. Its value at a gap is
 * intercept + slope gap. null for fewer than three days or when the gap never changes.
 * Source: ordinary least squares; the interval by Student's t with n - 2 degrees of freedom.
 * @param days K and kWh of each; a day with an unknown value is left out
 * @throws RangeError for energy below 0 or a gap outside -60..80 K
 */
export function energyLine(
  days: readonly { readonly gap: number | null; readonly kilowattHours: number | null }[],
): EnergyLine | null {
  const gaps: number[] = [];
  const energies: number[] = [];
  for (const { gap, kilowattHours } of days) {
    if (gap === null || kilowattHours === null) continue;
    expectRange('outside less inside', gap, -60, 80, 'K');
    expectRange('energy', kilowattHours, 0, 1_000_000, 'kWh');
    gaps.push(gap);
    energies.push(kilowattHours);
  }
  if (gaps.length < 3) return null;
  const line = straightLine(gaps, energies);
  if (line === null || line.slopeError === null || line.residualSd === null) return null;
  const half = studentQuantile(0.975, line.n - 2) * line.slopeError;
  const span = Math.max(...gaps) - Math.min(...gaps);
  return {
    slope: line.slope,
    slopeLow: line.slope - half,
    slopeHigh: line.slope + half,
    intercept: line.intercept,
    residualSd: line.residualSd,
    days: line.n,
    enough: line.n >= FEWEST_DAYS && span >= LEAST_SPAN,
  };
}
