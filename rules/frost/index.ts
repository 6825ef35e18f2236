export {
  actThreshold,
  type Choice,
  expectedCosts,
  USUAL_COST_LOSS,
} from './actThreshold.ts';
export { alarmAt } from './alarmAt.ts';
export { bedOffset } from './bedOffset.ts';

export { conditionalOdds } from './conditionalOdds.ts';
export { type CoolingNight, coolingCurve, crossingTime } from './coolingCurve.ts';
export { advectiveFrost, coverBy } from './coverBy.ts';
export { type CoveredNight, coverGain, probabilityInside } from './coverGain.ts';
export { type DamageLimit, damageLimit, damageLimits } from './damageLimits.ts';
export { damageShare } from './damageShare.ts';
export { earnsItsPlace } from './earnsItsPlace.ts';
export { escalates, type Said } from './escalates.ts';
export { type ChosenModel, type Clued, fitChosen, predictChosen } from './fitChosen.ts';
export { fitNightLow } from './fitNightLow.ts';
export { fitNightLowTwoStep } from './fitNightLowTwoStep.ts';
export {
  bandOf,
  baseRateBefore,
  type ChanceBand,
  type ForecastScores,
  forecastScores,
  type ScoredForecast,
} from './forecastScores.ts';
export {
  type FrostDateCurve,
  firstFrostFit,
  frostBefore,
  frostDateCurve,
  frostDateQuantile,
} from './frostDateQuantile.ts';
export { frostDates, frostShare, type SeasonFrost } from './frostDates.ts';
export {
  countedWithin,
  type FrostHistory,
  frostCameBy,
  frostComesAfter,
  frostHistory,
  frostWithin,
} from './frostHistory.ts';
export { frostOdds } from './frostOdds.ts';
export { fallsEvenly, isClearCalm } from './isClearCalm.ts';
export { leftCurve } from './leftCurve.ts';
export { firstFrostNights, nextFrostNights } from './nightChances.ts';
export {
  type Beforehand,
  isExtrapolated,
  type Night,
  type NightLowModel,
} from './nightLowModel.ts';
export {
  betterUpdate,
  type NightReading,
  refittedLow,
  shiftedLow,
  type UpdateWay,
  updatedLow,
} from './nightUpdate.ts';
export { plausibleNights } from './plausibleNights.ts';
export {
  pooledLow,
  type SaidNight,
  type SourceRecord,
  sourceRecord,
  sourceWeight,
} from './pooledLow.ts';
export { type NightLow, predictNightLow } from './predictNightLow.ts';
export { probabilityBelow } from './probabilityBelow.ts';
export { probabilityBelowBy } from './probabilityBelowBy.ts';
export { relativeValue } from './relativeValue.ts';
export { learnedSpread, remainingSpread } from './remainingSpread.ts';
export { riskOverYears } from './riskOverYears.ts';
export { type Hemisphere, MIDWINTER, type SeasonDay, seasonDay } from './seasonDay.ts';
export { dateOffsets, siteFromStation, thresholdAtStation } from './siteFromStation.ts';
export { type Fitted, type NightLowOf, type SiteFrost, siteFrost } from './siteFrost.ts';
export { sprinklingSafe } from './sprinklingSafe.ts';
export { type StationPrior, stationPrior } from './stationPrior.ts';
export { isTrained, type RecordedNight, trainingNights } from './trainingNights.ts';
export { clearChance, otherNights, unsureSky } from './unsureSky.ts';
export { untrainedLow } from './untrainedLow.ts';
export { weibullQuantile } from './weibullQuantile.ts';
export { worthActing } from './worthActing.ts';
