import { expectRange } from '../expectRange.ts';
import { celsius } from '../units.ts';
import { fitLine, type Line, leaveOneOutRmse, type Row, residualSd } from './leastSquares.ts';
import type { Night, NightLowModel } from './nightLowModel.ts';

const FEWEST = 3; // a line with one degree of freedom; a trustworthy one needs 10 (ours)
const FEWEST_WITH_DEW_POINT = 5; // ours: two residual degrees of freedom
const WORTH_IT = 0.98; // the dew point has to lower the error by more than 2 %; ours

/**
 * Learns how low a spot goes from what past clear, calm evenings were like.
 *
 * The lowest temperature is a straight line in the evening temperature. The dew point is taken in
 * only when it lowers the leave-one-out error by more than 2 % on the same nights: on the example
 * nights of the source it does not. Then the fit is a joint one, for which the spread of a forecast
 * is known exactly; the published two-step fit is fitNightLowTwoStep.
 *
 * Source: Snyder & de Melo-Abreu 2005, Frost Protection, FAO Env. & Nat. Res. Series 10, vol. 1.
 * @param nights oldest or newest first alike; `dewPoint` may be null in some
 * @throws RangeError for fewer than 3 nights or temperatures outside -60..60 °C
 */
export function fitNightLow(nights: readonly Night[]): NightLowModel {
  expectNights(nights);
  const byTemperature = onTemperature(nights);

  const damp = nights.filter(hasDewPoint);
  if (damp.length < FEWEST_WITH_DEW_POINT) return byTemperature;
  const rows = damp.map(withDewPoint);
  const joint = fitLine(rows, 2);
  const plain = fitLine(rows, 1);
  if (joint === null || plain === null) return byTemperature;
  // Compared on the same nights; and nights without a dew point are not thrown away lightly: the
  // joint fit has to beat what all nights together can do.
  const best = Math.min(leaveOneOutRmse(plain, rows), byTemperature.leaveOneOutRmse);
  if (leaveOneOutRmse(joint, rows) >= WORTH_IT * best) return byTemperature;
  return modelOf(damp, rows, joint, byTemperature);
}

function onTemperature(nights: readonly Night[]): NightLowModel {
  const rows = nights.map(({ temperature, low }) => ({ x: [temperature], y: low }));
  // Evenings all alike leave nothing to draw a line through: then the mean is all there is.
  const line = fitLine(rows, 1) ?? fitLine(rows, 0);
  if (line === null) throw new RangeError('Expected nights with temperatures, got none');
  return modelOf(nights, rows, line, null);
}

export function modelOf(
  nights: readonly Night[],
  rows: readonly Row[],
  line: Line,
  withoutDewPoint: NightLowModel | null,
): NightLowModel {
  const temperatures = nights.map(({ temperature }) => temperature);
  const [temperatureSlope = 0, dewPointSlope = 0] = line.slopes;
  return {
    n: line.n,
    df: line.df,
    residualSd: residualSd(line, rows),
    leaveOneOutRmse: leaveOneOutRmse(line, rows),
    predictors: (['temperature', 'dewPoint'] as const).slice(0, line.slopes.length),
    intercept: line.intercept,
    temperatureSlope,
    dewPointSlope,
    temperatureRange: [celsius(Math.min(...temperatures)), celsius(Math.max(...temperatures))],
    line,
    withoutDewPoint,
  };
}

export function expectNights(nights: readonly Night[]) {
  expectRange('number of nights', nights.length, FEWEST, 10_000, '');
  for (const { temperature, dewPoint, low } of nights) {
    expectRange('evening temperature', temperature, -60, 60, '°C');
    if (dewPoint !== null) expectRange('dew point', dewPoint, -80, 60, '°C');
    expectRange('low of the night', low, -60, 60, '°C');
  }
}

export const hasDewPoint = ({ dewPoint }: Night) => dewPoint !== null;
export const withDewPoint = ({ temperature, dewPoint, low }: Night): Row => ({
  x: [temperature, dewPoint ?? Number.NaN],
  y: low,
});
