export { acceptedBase, type BaseInUse } from './acceptedBase.ts';
export { baseTemperature, type Sowing } from './baseTemperature.ts';
export { type BatchHeat, batchHeat } from './batchHeat.ts';
export type { Cutoff, DayExtremes } from './dailyDegreeDays.ts';
export { dailyLightIntegral } from './dailyLightIntegral.ts';
export { type DayHeat, type DayToCount, dayHeat } from './dayHeat.ts';
export { dayLength } from './dayLength.ts';
export {
  dayAt,
  dayNumber,
  dayOfCommonYear,
  dayOfYear,
  daysApartInYear,
  daysInMonth,
  written,
} from './dayNumber.ts';
export { degreeDays } from './degreeDays.ts';
export { type AverageDay, degreeDaysAverage } from './degreeDaysAverage.ts';
export { degreeDaysSine } from './degreeDaysSine.ts';
export { degreeDaysTriangle } from './degreeDaysTriangle.ts';
export { type FilledReading, fillGaps } from './fillGaps.ts';
export { hourlyOffsets, standardHour } from './hourlyOffsets.ts';
export { hoursBelow } from './hoursBelow.ts';
export { meanAboveLine, timeAboveLine } from './lineAbove.ts';
export { rateIntercept } from './rateIntercept.ts';
export { scanBase } from './scanBase.ts';
export { type Screened, screenReadings } from './screenReadings.ts';
export { isStanding, standingDays } from './standingDays.ts';
export { type StartingBase, startingBase, startingBases } from './startingBases.ts';
export { sunTimes } from './sunTimes.ts';
export type { MaybeTemperature, TemperatureReading } from './temperatureReading.ts';
export { walkSegments } from './walkSegments.ts';
