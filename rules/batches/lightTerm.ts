import { expectRange } from '../expectRange.ts';
import { meanOf, straightLine } from '../statistics/index.ts';

// Common practice, no source.
const FEWEST = 8; // batches
const STRONG_ENOUGH = -0.5; // correlation of heat units with light: more units in less light

/** How heat units at the stage change with the batch's mean daily light integral. */
export type LightTerm = {
  /** °C d for each mol m⁻² d⁻¹ more; negative. */
  readonly slope: number;
  /** Mean light of the batches learned from, mol m⁻² d⁻¹, where the term is nothing. */
  readonly at: number;
  readonly correlation: number;
};

/**
 * A light term for heat units, only when eight batches or more show a correlation with light below
 * -0.5; otherwise null, and units alone are used. Add `slope x (light - at)` to the mean.
 * @param batches heat units of each (°C d) and its mean daily light integral (mol m⁻² d⁻¹)
 * @throws RangeError for light outside 0..100 or units outside 1..10,000
 */
export function lightTerm(
  batches: readonly { readonly degreeDays: number; readonly light: number | null }[],
): LightTerm | null {
  const known = batches.flatMap(({ degreeDays, light }) => {
    expectRange('units of a batch', degreeDays, 1, 10_000, '°C d');
    if (light === null) return [];
    expectRange('daily light integral', light, 0, 100, 'mol m⁻² d⁻¹');
    return [{ degreeDays, light }];
  });
  if (known.length < FEWEST) return null;
  const lights = known.map(({ light }) => light);
  const line = straightLine(
    lights,
    known.map(({ degreeDays }) => degreeDays),
  );
  if (line === null) return null;
  const correlation = Math.sign(line.slope) * Math.sqrt(line.r2);
  if (!(correlation < STRONG_ENOUGH)) return null;
  return { slope: line.slope, at: meanOf(lights), correlation };
}
