import type { Celsius } from '../units.ts';
import type { Line } from './leastSquares.ts';

/** One past night: what was measured beforehand, and how low it went. */
export type Night = {
  readonly temperature: Celsius;
  /** null where humidity was not known. */
  readonly dewPoint: Celsius | null;
  readonly low: Celsius;
};

/** Readings of this evening (or afternoon), at the hour the nights were learned from. */
export type Beforehand = {
  readonly temperature: Celsius;
  readonly dewPoint?: Celsius | null | undefined;
};

/** What was learned from past nights: plain data, to be kept and read again. */
export type NightLowModel = {
  /** Nights learned from. */
  readonly n: number;
  /** Degrees of freedom of the residuals. */
  readonly df: number;
  /** Standard deviation of the residuals, K. */
  readonly residualSd: number;
  /** Error of predicting each night from the others, K. */
  readonly leaveOneOutRmse: number;
  readonly predictors: readonly ('temperature' | 'dewPoint')[];
  readonly intercept: number;
  readonly temperatureSlope: number;
  /** 0 when the dew point is not used. */
  readonly dewPointSlope: number;
  /** Coldest and warmest evening seen; beyond it a forecast is extrapolated. */
  readonly temperatureRange: readonly [Celsius, Celsius];
  readonly line: Line;
  /** For an evening without a dew point; null when this model needs none. */
  readonly withoutDewPoint: NightLowModel | null;
};

/** Whether this evening is colder or warmer than any learned from. */
export const isExtrapolated = (model: NightLowModel, temperature: Celsius): boolean =>
  temperature < model.temperatureRange[0] || temperature > model.temperatureRange[1];
