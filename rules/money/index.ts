export {
  type BatchEarnings,
  type BatchMoney,
  batchEarnings,
  breakEvenPrice,
} from './batchEarnings.ts';
export { batchesToTell } from './batchesToTell.ts';
export {
  contribution,
  costPerKilogramSold,
  type HarvestCost,
  harvestHours,
} from './costPerKilogramSold.ts';
export { breakEvenFall, expectedSaving } from './expectedSaving.ts';
export { type PickedKilograms, type PickingSpeed, pickingSpeed } from './pickingSpeed.ts';
export { type Picking, type PickOn, pickOn } from './pickOn.ts';
export {
  expectMoney,
  type TrayCrop,
  valuePerAreaDay,
  valuePerLabourHour,
} from './valuePerAreaDay.ts';
export { type Worth, type WorthVerdict, worthItsHours } from './worthItsHours.ts';
