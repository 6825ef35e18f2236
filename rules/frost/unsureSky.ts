import { expectRange } from '../expectRange.ts';
import { daysApartInYear } from '../heat/index.ts';
import { orUnknown } from '../orUnknown.ts';
import { orUnknownField } from '../orUnknownField.ts';
import { type Probability, probability } from '../units.ts';

/** Chance that the night stays clear and calm, by how the grower sees the sky: no source. */
export const clearChance = {
  clear: probability(0.9),
  broken: probability(0.5),
  overcast: probability(0.1),
} as const;

const WINDOW = 30; // days of the year, around the night; common practice, no source

/**
 * Chance of going below when it is not sure that the night will be clear and calm: what radiation
 * would do, and what other nights have done, weighed by the chance of either.
 * @throws RangeError for any chance outside 0..1
 */
export const unsureSky = orUnknownField(function unsureSky(chances: {
  /** That the night is clear and calm. */
  readonly clear: number;
  /** Of going below on such a night: probabilityBelow. */
  readonly radiation: number;
  /** Of going below on any other: otherNights. */
  readonly other: number;
}): Probability {
  const { clear, radiation, other } = chances;
  expectRange('chance of a clear night', clear, 0, 1, '');
  expectRange('chance on a clear night', radiation, 0, 1, '');
  expectRange('chance on other nights', other, 0, 1, '');
  return probability(clear * radiation + (1 - clear) * other);
});

/**
 * How often nights that were not clear and calm have gone below `threshold`, in the thirty days of
 * the year around `on` (`2025-11-03`): half an event is added to those seen and one night to the
 * nights, so that it is never quite 0 or 1, and a half where there were none at all.
 * @throws RangeError for a day that is no calendar day, or a threshold outside ±100 °C
 */
export const otherNights = orUnknown(function otherNights(
  nights: readonly {
    readonly night: string;
    readonly clearCalm: boolean | null;
    readonly low: number | null;
  }[],
  threshold: number,
  on: string,
): Probability {
  expectRange('threshold', threshold, -100, 100, '°C');
  const near = nights.filter(
    ({ night, clearCalm, low }) =>
      clearCalm === false && low !== null && daysApartInYear(night, on) <= WINDOW / 2,
  );
  const below = near.filter(({ low }) => (low ?? threshold) < threshold).length;
  return probability((below + 0.5) / (near.length + 1));
});
