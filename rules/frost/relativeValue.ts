import { expectRange } from '../expectRange.ts';

/**
 * What forecasts were worth to somebody with this cost-loss ratio: 0 is no better than the base
 * rate alone, 1 is as good as knowing. All costs per night in units of the loss: of acting whenever
 * the probability exceeds the ratio, of the cheaper of always and never, of acting just when harm
 * comes. `value` is null when knowing would save nothing.
 *
 * Source: Murphy 1977, Mon. Wea. Rev. 105:803; Katz & Murphy (eds) 1997, Economic Value of Weather
 * and Climate Forecasts (abstracts).
 * @param nights `baseRate` is how often harm comes; of these nights when not given
 * @throws RangeError for lists of other lengths, none at all, or anything outside 0..1
 */
export function relativeValue(nights: {
  readonly probabilities: readonly number[];
  readonly outcomes: readonly (number | boolean)[];
  readonly ratio: number;
  readonly baseRate?: number | undefined;
}): {
  readonly value: number | null;
  readonly acted: number;
  readonly forecastCost: number;
  readonly climateCost: number;
  readonly perfectCost: number;
} {
  const { probabilities, ratio } = nights;
  const n = probabilities.length;
  expectRange('number of forecasts', n, 1, Number.POSITIVE_INFINITY, '');
  expectRange('number of outcomes', nights.outcomes.length, n, n, '');
  expectRange('cost-loss ratio', ratio, 0, 1, '');
  let acted = 0;
  let harmed = 0;
  let missed = 0;
  probabilities.forEach((probability, index) => {
    expectRange('probability', probability, 0, 1, '');
    const harm = Number(nights.outcomes[index]);
    expectRange('outcome', harm, 0, 1, '');
    harmed += harm;
    if (probability > ratio) acted += 1;
    else missed += harm;
  });
  const rate = nights.baseRate ?? harmed / n;
  expectRange('base rate', rate, 0, 1, '');
  const forecastCost = (ratio * acted + missed) / n;
  const climateCost = Math.min(ratio, rate);
  const perfectCost = rate * ratio;
  const saves = climateCost - perfectCost;
  const value = saves === 0 ? null : (climateCost - forecastCost) / saves;
  return { value, acted, forecastCost, climateCost, perfectCost };
}
