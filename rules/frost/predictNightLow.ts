import { expectRange } from '../expectRange.ts';
import { type Celsius, celsius } from '../units.ts';
import { leverageAt, valueAt } from './leastSquares.ts';
import type { Beforehand, NightLowModel } from './nightLowModel.ts';

/** Tonight's low as a Student t distribution around `mean`. */
export type NightLow = {
  readonly mean: Celsius;
  /** Standard error of one new night, K. */
  readonly sd: number;
  readonly df: number;
};

/**
 * The low to expect after this evening, with the spread of one new night: the residual spread and
 * the uncertainty of the line, wider the further the evening is from those learned from. A model
 * that uses the dew point falls back on temperature alone when tonight's is not known. null when
 * the evening's temperature is not known either.
 *
 * Source: prediction interval of least squares; se = s sqrt(1 + x'(X'X)^-1 x), n - k df.
 * @throws RangeError for an evening outside -60..60 °C
 */
export function predictNightLow(model: NightLowModel, evening: Beforehand): NightLow;
export function predictNightLow(
  model: NightLowModel,
  evening: { readonly temperature: Celsius | null; readonly dewPoint?: Celsius | null | undefined },
): NightLow | null;
export function predictNightLow(
  model: NightLowModel,
  evening: { readonly temperature: Celsius | null; readonly dewPoint?: Celsius | null | undefined },
): NightLow | null {
  const { temperature, dewPoint = null } = evening;
  if (temperature === null) return null;
  expectRange('evening temperature', temperature, -60, 60, '°C');
  if (dewPoint !== null) expectRange('dew point', dewPoint, -80, 60, '°C');
  if (dewPoint === null && model.predictors.includes('dewPoint')) {
    if (model.withoutDewPoint === null) {
      throw new RangeError('Expected dew point from -80 to 60 °C, got null');
    }
    return predictNightLow(model.withoutDewPoint, { temperature });
  }
  const x = [temperature, dewPoint ?? 0].slice(0, model.predictors.length);
  return {
    mean: celsius(valueAt(model.line, x)),
    sd: model.residualSd * Math.sqrt(1 + leverageAt(model.line, x)),
    df: model.df,
  };
}
