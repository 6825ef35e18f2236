import { expectRange } from '../expectRange.ts';
import { type Celsius, celsius } from '../units.ts';

/** One batch: mean temperature from sowing to the stage, °C, and the days it took. */
export type Sowing = { readonly temperature: number; readonly days: number };

/**
 * The base temperature that best explains the grower's own sowings, by four methods; their spread
 * is how unsure it is. A method that the data do not determine gives null (all at one temperature,
 * for instance). Whether it may replace a starting value is for acceptedBase to say.
 *
 * Source: Yang, Logan & Coffey 1995, Agric. For. Meteorol. 74:61 (algebra as in a documented open
 * implementation). They suppose no time below the base or above the upper threshold; where there
 * was any, see scanBase.
 * @throws RangeError for fewer than 3 sowings, temperatures outside -10..50 °C, or no days
 */
export function baseTemperature(sowings: readonly Sowing[]): {
  /** Heat units vary least. */
  readonly leastSdDegreeDays: Celsius | null;
  /** Days, predicted from heat units, miss least. */
  readonly leastSdDays: Celsius | null;
  /** Heat units vary least in proportion to their mean, and so do the days they predict. */
  readonly cvDays: Celsius | null;
  /** Heat units no longer depend on temperature. */
  readonly regression: Celsius | null;
} {
  expectSowings(sowings);
  const T = sowings.map(({ temperature }) => temperature);
  const d = sowings.map(({ days }) => days);
  const Td = sowings.map(({ temperature, days }) => temperature * days);
  const A = covariance(Td, Td);
  const B = covariance(Td, d);
  const C = covariance(d, d);
  const meanT = mean(T);
  const weightedT = mean(Td) / mean(d);
  return {
    leastSdDegreeDays: share(B, C),
    leastSdDays: share(B * meanT - A, C * meanT - B),
    // The same with the mean temperature weighted by days: the published sums, divided through.
    cvDays: share(B * weightedT - A, C * weightedT - B),
    regression: share(covariance(Td, T), covariance(d, T)),
  };
}

export function expectSowings(sowings: readonly Sowing[]) {
  expectRange('number of sowings', sowings.length, 3, Number.POSITIVE_INFINITY, '');
  for (const { temperature, days } of sowings) {
    expectRange('temperature of a sowing', temperature, -10, 50, '°C');
    expectRange('days of a sowing', days, 0.1, 1000, '');
  }
}

// Batches that all took the same days leave a covariance of rounding errors only.
const NOTHING = 1e-9;

const share = (over: number, under: number) =>
  Math.abs(under) < NOTHING ? null : celsius(over / under);

const mean = (values: readonly number[]) =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

export function covariance(a: readonly number[], b: readonly number[]): number {
  const meanA = mean(a);
  const meanB = mean(b);
  return mean(a.map((value, index) => (value - meanA) * ((b[index] ?? 0) - meanB)));
}
