// The rules as a library: the door for outsiders and for the hub. Numbers are plain at run time;
// the makers (celsius, percent, ...) only tell the compiler what they measure.

export * from './air/index.ts';
export * from './answer.ts';
export * from './batches/index.ts';
export * from './cooler/index.ts';
export * from './days/index.ts';
export { decide, type Failure, type Outlook, rank } from './decide/index.ts';
export type * from './decide/snapshot.ts';
export * from './disease/index.ts';
export * from './frost/index.ts';
export * from './heat/index.ts';
export {
  type AssociationWords,
  associationWords,
  exposureSplit,
  isExposed,
  type LossAssociation,
  type LossFactor,
  type LossFindings,
  type LotExposure,
  type LotLoss,
  lossAssociation,
  lossAssociations,
  lossMoney,
  type PooledLoss,
  pooledLoss,
  type SplitFacts,
  type SplitTest,
} from './losses/index.ts';
export {
  type BatchEarnings,
  type BatchMoney,
  batchEarnings,
  batchesToTell,
  breakEvenFall,
  breakEvenPrice,
  contribution,
  costPerKilogramSold,
  expectedSaving,
  type HarvestCost,
  harvestHours,
  type PickedKilograms,
  type Picking,
  type PickingSpeed,
  type PickOn,
  pickingSpeed,
  pickOn,
  type TrayCrop,
  valuePerAreaDay,
  valuePerLabourHour,
  type Worth,
  type WorthVerdict,
  worthItsHours,
} from './money/index.ts';
export * from './stations/index.ts';
export {
  autocorrelation,
  type BootstrapInterval,
  type BrierParts,
  benjaminiHochberg,
  bootstrapInterval,
  brierParts,
  brierScore,
  brierSkill,
  type Cusum,
  type CusumPoint,
  chanceOfFalseFind,
  cusum,
  drawnShareOf,
  type EwmaPoint,
  type EwmaSettings,
  effectiveSampleSize,
  enoughToCompare,
  ewmaAutocorrelationFactor,
  ewmaChart,
  FEWEST_FORECASTS,
  FEWEST_IN_GROUP,
  FEWEST_LOTS,
  type ForecastGroup,
  fisherExact,
  fisherExactOneSided,
  leastFisherP,
  median,
  newcombeDifference,
  normalCdf,
  normalQuantile,
  type PairedDifference,
  pairedDifference,
  percentile,
  permutationTest,
  poissonCdf,
  poissonChance,
  poissonLimits,
  type RatioInterval,
  type RatioPair,
  rankSum,
  ratioInterval,
  type StraightLine,
  spearman,
  straightLine,
  studentCdf,
  studentQuantile,
  wilson,
} from './statistics/index.ts';
export * from './units.ts';
export * from './water/index.ts';
export * from './wetness/index.ts';
