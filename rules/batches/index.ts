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
export { readyProbability } from './readyProbability.ts';
export { type SowingPlan, sowingDay } from './sowingDay.ts';
export { anomalyWeight, type ForecastPair, forecastWeight, unitsAhead } from './unitsAhead.ts';
