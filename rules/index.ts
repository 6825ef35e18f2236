// The rules as a library: the door for outsiders and for the hub. Numbers are plain at run time;
// the makers (celsius, percent, ...) only tell the compiler what they measure.

export {
  type Air,
  absoluteHumidity,
  dewPoint,
  dewPointDepression,
  frostPoint,
  humidityRatio,
  mix,
  saturationOverIce,
  saturationVapourPressure,
  vapourPressure,
  vapourPressureDeficit,
  ventGain,
  wetBulb,
} from './air/index.ts';
export * from './answer.ts';
export { harvestWindow } from './batches/index.ts';
export {
  fitTimeConstant,
  type KeepingLife,
  meanKineticTemperature,
  produceTemperature,
  produceTime,
  remainingLife,
  type StoppedRoom,
  type TimeConstant,
  timeAbove,
  warmingTime,
} from './cooler/index.ts';
export { type DayFacts, type DayRule, dayFacts } from './days/index.ts';
export { decide, type Failure, type Outlook, rank } from './decide/index.ts';
export type * from './decide/snapshot.ts';
export {
  anthracnoseFruitIncidence,
  botrytisFruitIncidence,
  type DiseaseParameters,
  type InfectionParameters,
  infectionHours,
  infectionParameters,
  infectionProgress,
} from './disease/index.ts';
export {
  type Beforehand,
  type CoolingNight,
  conditionalOdds,
  coolingCurve,
  crossingTime,
  fitNightLow,
  fitNightLowTwoStep,
  frostOdds,
  isExtrapolated,
  type Night,
  type NightLow,
  type NightLowModel,
  predictNightLow,
  probabilityBelow,
  worthActing,
} from './frost/index.ts';
export {
  baseTemperature,
  type Cutoff,
  type DayExtremes,
  dayLength,
  degreeDays,
  degreeDaysSine,
  degreeDaysTriangle,
  hoursBelow,
  rateIntercept,
  type Sowing,
  sunTimes,
  type TemperatureReading,
} from './heat/index.ts';
export {
  brierScore,
  fisherExact,
  median,
  normalCdf,
  percentile,
  spearman,
  studentCdf,
  studentQuantile,
  wilson,
} from './statistics/index.ts';
export * from './units.ts';
export {
  type LeavesNow,
  leavesWet,
  type SpellRule,
  type WetReading,
  type WetRule,
  type WetSpell,
  wetSpells,
  wetTime,
} from './wetness/index.ts';
