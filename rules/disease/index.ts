export { anthracnose } from './anthracnose.ts';
export { anthracnoseFruitIncidence, anthracnoseModel } from './anthracnoseFruitIncidence.ts';
export { basilInfection, unbrokenHours } from './basilInfection.ts';
export {
  basilSporulation,
  cautiousSporulationNight,
  darkDampHours,
  sporulationNight,
} from './basilSporulation.ts';
export { botrytisFruitIncidence, botrytisModel } from './botrytisFruitIncidence.ts';
export { brassicaDownyMildew } from './brassicaDownyMildew.ts';
export { type DayOfSpells, dayOfSpells } from './dayOfSpells.ts';
export { diseases, diseasesOf } from './diseases.ts';
export { earlyBlight, earlyBlightBounds, earlyBlightSeverity } from './earlyBlight.ts';
export { greyMouldFlowers } from './greyMouldFlowers.ts';
export { greyMouldHouse, OUTBREAK_WET_HOURS, outbreakWeek, weekMeans } from './greyMouldHouse.ts';
export { greyMouldLeaves } from './greyMouldLeaves.ts';
export {
  hoursToIncidence,
  type IncidenceModel,
  incidenceBounds,
  incidenceOfHours,
} from './incidenceOfSpell.ts';
export {
  daysSince,
  escalated,
  type InfectionEvent,
  infectionEvent,
  stageOf,
} from './infectionEvent.ts';
export { type InfectionParameters, infectionHours } from './infectionHours.ts';
export { type DiseaseParameters, infectionParameters } from './infectionParameters.ts';
export { infectionProgress, progressBounds } from './infectionProgress.ts';
export type { Circumstances, DayOfWeek, Disease, Judgement, Verdict } from './judgement.ts';
export { judgeProgress } from './judgeProgress.ts';
export {
  type BlightDay,
  blightDay,
  lateBlight,
  lateBlightSmith,
  twoDayBlight,
} from './lateBlight.ts';
export { lateBlightInfection } from './lateBlightInfection.ts';
export { lettuceInfection } from './lettuceInfection.ts';
export { infectiousMorning, lettuceMorning } from './lettuceMorning.ts';
export { minimumAtLeast } from './minimumAtLeast.ts';
export { pickingBlocked, type Treatment } from './pickingBlocked.ts';
export { mildewHours, powderyMildew } from './powderyMildew.ts';
export {
  classFor,
  classOfIncidence,
  classOfProgress,
  EVENT_INCIDENCE,
  type RiskClass,
  type RiskRange,
  type RiskWord,
  riskWord,
  worseRange,
} from './riskClass.ts';
export {
  type Situation,
  SPRAY_CAUTIONS,
  type TradeAnswer,
  type TradeStep,
  tradeAnswer,
} from './tradeAnswer.ts';
export { classOfDampHours, trayDamp, trayDampHours } from './trayDamp.ts';
export { wetMornings } from './wetMornings.ts';
