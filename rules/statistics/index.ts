export {
  autocorrelation,
  effectiveSampleSize,
  ewmaAutocorrelationFactor,
} from './autocorrelation.ts';
export { benjaminiHochberg, chanceOfFalseFind } from './benjaminiHochberg.ts';
export { type BlockCase, blockPermutation } from './blockPermutation.ts';
export {
  type BootstrapInterval,
  bootstrapInterval,
  FEWEST_TO_RESAMPLE,
} from './bootstrapInterval.ts';
export {
  type BrierParts,
  brierParts,
  brierSkill,
  FEWEST_FORECASTS,
  type ForecastGroup,
} from './brierParts.ts';
export { brierScore } from './brierScore.ts';
export { type Cusum, type CusumPoint, cusum } from './cusum.ts';
export { drawnShareOf } from './drawnShareOf.ts';
export { type EwmaPoint, type EwmaSettings, ewmaChart, MISSING_TO_RESTART } from './ewmaChart.ts';
export { expectCount } from './expectCount.ts';
export { expectNumbers } from './expectNumbers.ts';
export { fisherExact, fisherExactOneSided } from './fisherExact.ts';
export { holm } from './holm.ts';
export { type MeanInterval, meanInterval } from './meanInterval.ts';
export { meanOf } from './meanOf.ts';
export { median } from './median.ts';
export { medianInterval } from './medianInterval.ts';
export { enoughToCompare, FEWEST_IN_GROUP, FEWEST_LOTS, leastFisherP } from './minimumData.ts';
export { newcombeDifference } from './newcombeDifference.ts';
export { normalCdf } from './normalCdf.ts';
export { normalQuantile } from './normalQuantile.ts';
export { type PairedDifference, pairedDifference } from './pairedDifference.ts';
export { percentile } from './percentile.ts';
export { permutationTest } from './permutationTest.ts';
export { poissonCdf, poissonChance, poissonLimits } from './poisson.ts';
export { rankSum } from './rankSum.ts';
export { ranks } from './ranks.ts';
export { type RatioInterval, type RatioPair, ratioInterval } from './ratioInterval.ts';
export { spearman } from './spearman.ts';
export { type StraightLine, straightLine } from './straightLine.ts';
export { studentCdf } from './studentCdf.ts';
export { studentQuantile } from './studentQuantile.ts';
export { wilson } from './wilson.ts';
