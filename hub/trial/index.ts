// A limit tried on the past: the hub's own rules over the hours that are kept.
export { changedFarm, limitAt, limitNow, limitsOf, type Standing } from './changedFarm.ts';
export { compareDays, type LossDay, type LossSide, type Row } from './compareDays.ts';
export type { WouldAsk } from './keeper.ts';
export { makeTrials, type TrialState, type Trials } from './makeTrials.ts';
export { type RunTrial, runTrial, type TrialTold } from './runTrial.ts';
export { type PlaceTrial, type Progress, type TrialJob, walkPast } from './walkPast.ts';
export type { MayAsk } from './walkPlace.ts';
