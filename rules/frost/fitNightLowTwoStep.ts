import { expectNights, hasDewPoint, modelOf, withDewPoint } from './fitNightLow.ts';
import { fitLine, valueAt } from './leastSquares.ts';
import type { Night, NightLowModel } from './nightLowModel.ts';

/**
 * The fit as published, dew point forced in: the low on the evening temperature first, then what
 * is left over on the dew point. It is not a joint least-squares fit and gives other coefficients.
 * Its leave-one-out error comes from refitting, and its spread takes the leverage of the joint
 * design, which is right to first order only.
 *
 * Source: Snyder & de Melo-Abreu 2005, Frost Protection, FAO Env. & Nat. Res. Series 10, vol. 1.
 * @throws RangeError for fewer than 4 nights with a dew point, or evenings all alike
 */
export function fitNightLowTwoStep(nights: readonly Night[]): NightLowModel {
  expectNights(nights);
  const damp = nights.filter(hasDewPoint);
  const coefficients = twoStep(damp);
  const rows = damp.map(withDewPoint);
  const joint = fitLine(rows, 2);
  if (coefficients === null || joint === null || damp.length < 4) {
    throw new RangeError(
      `Expected 4 or more nights with differing dew points, got ${damp.length} nights`,
    );
  }
  const model = modelOf(damp, rows, { ...joint, ...coefficients }, null);
  return { ...model, leaveOneOutRmse: refittedRmse(damp) };
}

function twoStep(nights: readonly Night[]) {
  const first = fitLine(
    nights.map(({ temperature, low }) => ({ x: [temperature], y: low })),
    1,
  );
  if (first === null) return null;
  const second = fitLine(
    nights.map(({ temperature, dewPoint, low }) => ({
      x: [dewPoint ?? Number.NaN],
      y: low - valueAt(first, [temperature]),
    })),
    1,
  );
  if (second === null) return null;
  return {
    intercept: first.intercept + second.intercept,
    slopes: [first.slopes[0] ?? 0, second.slopes[0] ?? 0],
  };
}

function refittedRmse(nights: readonly Night[]): number {
  const squares = nights.map((night) => {
    const fit = twoStep(nights.filter((other) => other !== night));
    const { x, y } = withDewPoint(night);
    return fit === null ? Number.NaN : (y - valueAt(fit, x)) ** 2;
  });
  return Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / squares.length);
}
