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
