import { expectRange } from '../expectRange.ts';

/**
 * How far stated chances were from what happened: mean of (probability - outcome)^2, 0 (always
 * right and sure) to 1. Source: Brier 1950, Mon. Wea. Rev. 78:1, the two-class form.
 * @param outcomes 1 or true where it happened, 0 or false where not
 * @throws RangeError unless both lists have the same length, from 1, and hold 0..1
 */
export function brierScore(
  probabilities: readonly number[],
  outcomes: readonly (number | boolean)[],
): number {
  expectRange('number of forecasts', probabilities.length, 1, Number.POSITIVE_INFINITY, '');
  expectRange(
    'number of outcomes',
    outcomes.length,
    probabilities.length,
    probabilities.length,
    '',
  );
  let sum = 0;
  probabilities.forEach((forecast, index) => {
    // null would pass as 0.
    const outcome = Number(outcomes[index] ?? Number.NaN);
    expectRange('probability', forecast ?? Number.NaN, 0, 1, '');
    expectRange('outcome', outcome, 0, 1, '');
    sum += (forecast - outcome) ** 2;
  });
  return sum / probabilities.length;
}
