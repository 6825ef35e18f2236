import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';
import { type DegreeDays, degreeDaysOf } from '../units.ts';

/**
 * The two readings of one equation: the mean of the day less the base, never below nothing
 * (`mean-first`, method 1 of the source), or each extreme held between the thresholds before the
 * mean is taken (`limits-first`, method 2). Only the second has an upper threshold.
 */
export type AverageDay =
  | {
      readonly method: 'mean-first';
      readonly min: number;
      readonly max: number;
      readonly lower: number;
      readonly upper?: undefined;
    }
  | {
      readonly method: 'limits-first';
      readonly min: number;
      readonly max: number;
      readonly lower: number;
      readonly upper?: number | undefined;
    };

/**
 * Heat units of a day by the simple average of its extremes, °C d: for comparing with published
 * totals. The methods differ by as much as 83 % on cool days, so a total must name its own.
 *
 * Source: McMaster & Wilhelm 1997, Growing degree-days: one equation, two interpretations,
 * Agric. For. Meteorol. 87:291.
 * @throws RangeError for a maximum below the minimum, or an upper threshold not above the lower
 */
export const degreeDaysAverage = orUnknownField(function degreeDaysAverage(
  day: AverageDay,
): DegreeDays {
  const { method, min, max, lower, upper } = day;
  expectRange('minimum', min, -100, 200, '°C');
  expectRange('maximum', max, min, 200, '°C');
  expectRange('lower threshold', lower, -100, 200, '°C');
  if (method === 'mean-first') {
    if (upper !== undefined) {
      throw new RangeError(`Expected no upper threshold with mean-first, got ${upper}`);
    }
    return degreeDaysOf(Math.max(0, (max + min) / 2 - lower));
  }
  if (upper !== undefined) expectRange('upper threshold', upper, lower, 250, '°C');
  const held = (value: number) =>
    Math.min(Math.max(value, lower), upper ?? Number.POSITIVE_INFINITY);
  return degreeDaysOf((held(max) + held(min)) / 2 - lower);
});
