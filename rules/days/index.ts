export { type AiringFor, type AiringTrial, airingWouldDo } from './airingWouldDo.ts';
export { bestPlace, placeScore, type Trays } from './bestPlace.ts';
export { coldHours } from './coldHours.ts';
export { comparePlaces, type PlaceDifference, saysOf } from './comparePlaces.ts';
export { type DayFacts, type DayRule, dayFacts } from './dayFacts.ts';
export {
  type DaySpell,
  type DiseaseDay,
  dayOfWeek,
  diseaseDay,
  noonToNoon,
} from './diseaseDay.ts';
export { diseaseHours } from './diseaseHours.ts';
export {
  CLOSED_BEFORE_SUNSET,
  cropFloors,
  type DuskPlan,
  duskVents,
  EGGPLANT_FRUIT_SET,
  morningOpening,
  PURGE_MINUTES,
} from './duskVents.ts';
export { type BatchHarm, type HarmShare, harmPerHour } from './harmPerHour.ts';
export { type HeatLoad, heatLoad } from './heatLoad.ts';
export { type Band, type BandTally, hoursInBand } from './hoursInBand.ts';
export { type MoveTold, type MovingSpares, movingSpares } from './movingSpares.ts';
export { type NightAir, nightAir } from './nightAir.ts';
export {
  type DiseaseHours,
  type PlaceDay,
  type PlaceHour,
  type PlaceRule,
  placeHours,
} from './placeDay.ts';
export { enoughKnown, KNOWN_ENOUGH, type PlaceTally, placeTally } from './placeTally.ts';
export { type Reason, reasonOrder, strongestReason } from './reasonOrder.ts';
export { ventForHeat } from './ventForHeat.ts';
export {
  cropToVentFor,
  type VentCrop,
  type VentTemperatures,
  ventTemperatures,
} from './ventTemperatures.ts';
export { windCaution } from './windCaution.ts';
