export { type BatchSpread, batchQuantile, batchSpread } from './batchSpread.ts';
export {
  bestStop,
  type Cohort,
  type FruitPatch,
  ripeDay,
  rotChance,
  type Stop,
} from './bestStop.ts';
export { chanceReady } from './chanceReady.ts';
export { chanceShort, type DeliveryShare } from './chanceShort.ts';
export { climateCalendar } from './climateCalendar.ts';
export { climateUnits, placeLine, placeUnits } from './climateUnits.ts';
export { type Covered, coverWants, type Supply } from './coverWants.ts';
export { daysToHarvest } from './daysToHarvest.ts';
export { daysToReach, replayYears } from './daysToReach.ts';
export type { BatchAhead } from './enoughChance.ts';
export { flowerToRipe } from './flowerToRipe.ts';
export { freeTrays, type StandingTrays } from './freeTrays.ts';
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
export { type FoundReady, needOf } from './needOf.ts';
export { readyProbability } from './readyProbability.ts';
export { doubtedCourses, type ReadyWhen, readyWhen } from './readyWhen.ts';
export { type SowingDay, sowingDay } from './sowingDay.ts';
export {
  type PlannedCrop,
  type PlannedPlace,
  type PlannedSowing,
  type Shortfall,
  sowingPlan,
  type WantedWeight,
} from './sowingPlan.ts';
export {
  type PastAutumn,
  stopBacktest,
  type TriedAutumn,
  type TriedPatch,
} from './stopBacktest.ts';
export { type StopChange, stopChanges } from './stopChanges.ts';
export { type StopDay, type StopPlan, stopDays } from './stopDays.ts';
export { traysFor } from './traysFor.ts';
export { anomalyWeight, type ForecastPair, forecastWeight, unitsAhead } from './unitsAhead.ts';
