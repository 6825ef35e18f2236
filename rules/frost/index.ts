export { conditionalOdds } from './conditionalOdds.ts';
export { type CoolingNight, coolingCurve, crossingTime } from './coolingCurve.ts';
export { fitNightLow } from './fitNightLow.ts';
export { fitNightLowTwoStep } from './fitNightLowTwoStep.ts';
export { frostOdds } from './frostOdds.ts';
export {
  type Beforehand,
  isExtrapolated,
  type Night,
  type NightLowModel,
} from './nightLowModel.ts';
export { type NightLow, predictNightLow } from './predictNightLow.ts';
export { probabilityBelow } from './probabilityBelow.ts';
export { worthActing } from './worthActing.ts';
