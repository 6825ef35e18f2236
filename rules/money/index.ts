export {
  contribution,
  costPerKilogramSold,
  type HarvestCost,
  harvestHours,
} from './costPerKilogramSold.ts';
export { breakEvenFall, expectedSaving } from './expectedSaving.ts';
export {
  expectMoney,
  type TrayCrop,
  valuePerAreaDay,
  valuePerLabourHour,
} from './valuePerAreaDay.ts';
