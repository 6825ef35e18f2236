export { handbookRate, q10From, q10Rate, TYPICAL_Q10 } from './agingRate.ts';
export {
  type AlarmLatch,
  type AlarmState,
  alarmLatch,
  type LatchEvent,
  type LatchSettings,
  RESTING,
} from './alarmLatch.ts';
export { latencyReport, worstAlarmLatency } from './alarmLatency.ts';
export {
  alarmYardsticks,
  chatters,
  hubSilent,
  silentAfterMinutes,
  type Yardstick,
} from './alarmYardsticks.ts';
export { type BandMoved, bandMoved } from './bandMoved.ts';
export {
  type Calibration,
  calibrated,
  ICE_POINT,
  offsetCalibration,
  twoPointCalibration,
} from './calibration.ts';
// The room's habits, and what is out of them.
export { type CoilSign, coilSays } from './coilSays.ts';
export { chillingWarning, freezingNow } from './coldGuards.ts';
export { iceStore, offTimeAllowed, timeConstantNeeded } from './coolingReserve.ts';
export { coolingTime, halfCoolingTime, sevenEighthsCoolingTime } from './coolingTime.ts';
export { type CounterStep, counterDifference } from './counterDifference.ts';
export {
  type CycleDrift,
  cycleBottom,
  cycleDrift,
  DRIFT_WINDOWS,
  type DriftVerdict,
  fitDriftMargin,
} from './cycleDrift.ts';
export { cycleTurns, type Turn } from './cycleTurns.ts';
export { countedDay, type DayEnergy, drawnDay } from './dayEnergy.ts';
export {
  type DisplayUnit,
  displayUnit,
  fahrenheit,
  toFahrenheit,
  unitSwapped,
} from './displayUnit.ts';
export { ds18b20, ds18b20Conversion, isPowerOnValue } from './ds18b20.ts';
export {
  dailyEnergy,
  dutyFromPower,
  dutyFromTemperature,
  type PowerReading,
  type RunningShare,
} from './dutyCycle.ts';
export { type EnergyLine, energyIndex, energyLine } from './energyIndex.ts';
export { type EnergyDay, type EnergyTrend, energyTrend } from './energyTrend.ts';
export { type Excursion, excursions, stalled } from './excursions.ts';
export { type ExposureClock, exposureClock } from './exposureClock.ts';
export { filledFrom } from './filledFrom.ts';
export {
  type Bump,
  type Defrosts,
  defrostDue,
  defrostMayBeOn,
  defrostUntil,
  findDefrosts,
} from './findDefrosts.ts';
export {
  fitProduceTimeConstant,
  fitTimeConstant,
  STRAIGHT_ENOUGH,
  type TimeConstant,
} from './fitTimeConstant.ts';
export { type FoodLimit, foodLimits } from './foodLimits.ts';
export { carbonDioxide, type Fuel, type FuelUse, fuelUse, litresPerHour } from './fuelUse.ts';
export { type GeneratorPlan, generatorPlan } from './generatorPlan.ts';
export { heatCapacity, heatLossCoefficient } from './heatLoss.ts';
export { fitsFor, type HoldOver, holdOver, USUAL_TAU } from './holdOver.ts';
export { type CropKeeping, keepingLife, type LotLife } from './keepingLife.ts';
export { type Cycle, learnCycle } from './learnCycle.ts';
export { lifeUsedCooling } from './lifeUsedCooling.ts';
export { lostBottom, type Pull } from './lostBottom.ts';
export { type LotPiece, lotHistory } from './lotHistory.ts';
export { type LotDays, type LotKeeping, type LotLeft, lotLife } from './lotLife.ts';
export {
  activationOf,
  meanKineticOfReadings,
  meanKineticTemperature,
} from './meanKineticTemperature.ts';
export { type Crate, type MoveBy, moveProduceBy } from './moveProduceBy.ts';
export { type OffFit, offFits } from './offFits.ts';
export { type OffPeriodFit, offPeriodFit, usualTimeConstant } from './offPeriodFit.ts';
export { IDLE, offSpans, powerDay } from './powerDay.ts';
export { produceTemperature, produceTime, type StoppedRoom } from './produceTemperature.ts';
export { type PullDown, pullDown } from './pullDown.ts';
export { HARMLESS, type ReadingFlag, type ReadingToJudge, readingFlags } from './readingFlags.ts';
export { type RecordDay, recordDay } from './recordDay.ts';
export {
  type KeepingLife,
  type LifeHistory,
  lifeUsed,
  remainingLife,
  remainingLifePiecewise,
  remainingLifeSpread,
} from './remainingLife.ts';
export { respirationHeat } from './respirationHeat.ts';
export {
  type CauseFinding,
  type RoomCause,
  type RoomEvidence,
  roomCauses,
  type Sureness,
  type Trouble,
} from './roomCauses.ts';
export { type RoomContents, roomContents } from './roomContents.ts';
export { type PowerDay, type RoomDay, roomDay } from './roomDay.ts';
export { type RoomHabits, roomHabits } from './roomHabits.ts';
export { humidityProbePasses, type Salt, saltHumidity, saltHumidityFit } from './saltHumidity.ts';
export { sameValue } from './sameValue.ts';
export { type LotInTurn, type StoredLot, sellFirst } from './sellFirst.ts';
export { type SensorKind, sensorKinds } from './sensorKinds.ts';
export {
  ANY_GAP,
  longestGapOf,
  seriesBetween,
  unknownSpans,
} from './seriesBetween.ts';
export { isImpossibleRate, isLinkWeak, isSaturated, isSpike, isStuck } from './seriesFlags.ts';
export { slowerBy } from './slowerBy.ts';
export { type SheetLine, SOLAR_USUAL, type SolarSheet, solarSheet } from './solarSheet.ts';
export { batterySize, STARTING_CURRENT, solarPower } from './solarSizing.ts';
export { respirationRates, type StoredCrop, storageOf, storageTable } from './storageTable.ts';
export { timeAbove } from './timeAbove.ts';
export { firstNotBefore, type Span, smoothTrace, type Trace } from './trace.ts';
export { type UnitCalls, unitCalls } from './unitCalls.ts';
export {
  STOPS_DAYS,
  STOPS_FEWEST,
  type SupplyStop,
  type UsualStop,
  usualStops,
} from './usualStops.ts';
export { warmedTo, warmingTime } from './warmingTime.ts';
export { warmingUnder } from './warmingUnder.ts';
export { worksBy } from './worksBy.ts';
