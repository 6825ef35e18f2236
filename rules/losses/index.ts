export {
  EXPOSURE_DAYS,
  type Exposure,
  exposureLimits,
  LOSS_LIMIT,
} from './exposureLimits.ts';
export { exposureSplit, isExposed, type LotExposure, type SplitFacts } from './exposureSplit.ts';
export { lossAssociation, type SplitTest } from './lossAssociation.ts';
export {
  type AssociationWords,
  associationWords,
  type LossAssociation,
  type LossFactor,
  type LossFindings,
  lossAssociations,
} from './lossAssociations.ts';
export { type LotLoss, lossMoney, type PooledLoss, pooledLoss } from './lossShare.ts';
export {
  isLost,
  type LossCase,
  type WeekComparison,
  weekComparisons,
} from './weekComparisons.ts';
export { type ExposureDay, type HoursPast, weekExposure } from './weekExposure.ts';
export { type WeeksNeeded, weeksNeeded } from './weeksNeeded.ts';
