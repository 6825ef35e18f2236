export { type BatchSpread, batchQuantile, batchSpread } from './batchSpread.ts';
export {
  bestStop,
  type Cohort,
  type FruitPatch,
  rotChance,
  type Stop,
} from './bestStop.ts';
export { climateUnits, placeUnits } from './climateUnits.ts';
export { daysToHarvest } from './daysToHarvest.ts';
export { daysToReach, replayYears } from './daysToReach.ts';
export { flowerToRipe } from './flowerToRipe.ts';
export { type GrowingBatch, harvestWindow } from './harvestWindow.ts';
export {
  type Cleaning,
  type CuttingBack,
  keepCleanOrCut,
  worthCovering,
} from './keepCleanOrCut.ts';
export { type LightTerm, lightTerm } from './lightTerm.ts';
export { mayCutBack } from './mayCutBack.ts';
export { type MixPart, mixParts } from './mixParts.ts';
export { readyProbability } from './readyProbability.ts';
export { type SowingDay, sowingDay } from './sowingDay.ts';
export {
  type PlannedCrop,
  type PlannedPlace,
  type PlannedSowing,
  type Shortfall,
  sowingPlan,
  type WantedWeight,
} from './sowingPlan.ts';
export { traysFor } from './traysFor.ts';
export { anomalyWeight, type ForecastPair, forecastWeight, unitsAhead } from './unitsAhead.ts';
