import * as en from './en.ts';
import { isLanguage, type Language } from './languages.ts';
import { chooseUnits, type UnitsTold } from './units.ts';
import { wholeLanguages } from './wholeLanguages.ts';

// The language the hub speaks, under the names it is used by. `speak` changes them all at once, so
// they are read where a sentence is made and never when a file is loaded. There is one language in a
// process: of two hubs in one process the one that spoke last decides for both.

export * from './columns.ts';
export type {
  AlarmNews,
  ComparisonTold,
  FarmPart,
  FieldWords,
  PickEventFacts,
  TodayFacts,
} from './en.ts';
export * from './languages.ts';
export { type Complaint, refusal, refusalBeside, saidBeside, shown } from './refusal.ts';
export * from './units.ts';

// biome-ignore format: the same names twice, which one line each would make a page of
export let {
  ASK_OFFICER, alarmKindName, alarmMessage, alarmTroubleWords, batchEventWords, batchFields,
  batchWords, bestPlaceWords, calendarWords, caution, chanceTimes, checkHow, checkWords,
  chillWarning, clocksWhy, comparisonWords, coverWords, curveWords, deliveryWords, eventTime,
  evidenceLabel, evidenceLabels, exposureLabel, exposureWords, familyName, familyWords,
  farmChangeWords, farmFieldNames, inputLabels, keepingWords, learningWords, lossAmountWords,
  lossEventWords, lossFields, lossLookName, lossOfWords, lossStripWords, lossUnitName, lossWords,
  lotEventWords, lotFieldValue, lotFields, lotLifeWords, missingLabel, missingLabels,
  movingSavingWords, noBandWords, noFarmYet, pickEventWords, pickFields, pickOnWords,
  placeForCropWords, placeNowWords, placesPairWords, planMissing, printedLimit, probeCheckWords,
  readyWords, recordWords, refusalWords, refused, reviewKindName, reviewLooked, reviewNotes,
  reviewSentence, reviewSpanName, roomDayWords, roomNowWords, roomWarning, roomWords,
  sameLossWords, scoreWords, screens, shortWords, sourceWords, sowingWords, stopWords, storeAlarm,
  storeRefuses, storeTrouble, stripWords, suggestionWords, supplyWords, taskWords, title,
  todaySentence, traysThereWords, trialCaution, trialChangeWords, trialLimitWords, trialNotes,
  trialRowWords, trialWhy, trialWords, wantedSaid, weekWords, wholeFarm, why, withUnit,
  worthGroupName, worthHow, worthUnitWords, worthWords,
} = en as Language;

/** What the hub says from now on, in that language and for people who read those units. */
export function speak(language: Language, units: UnitsTold = {}): void {
  chooseUnits(units);
  // biome-ignore format: as above
  ({
    ASK_OFFICER, alarmKindName, alarmMessage, alarmTroubleWords, batchEventWords, batchFields,
    batchWords, bestPlaceWords, calendarWords, caution, chanceTimes, checkHow, checkWords,
    chillWarning, clocksWhy, comparisonWords, coverWords, curveWords, deliveryWords, eventTime,
    evidenceLabel, evidenceLabels, exposureLabel, exposureWords, familyName, familyWords,
    farmChangeWords, farmFieldNames, inputLabels, keepingWords, learningWords, lossAmountWords,
    lossEventWords, lossFields, lossLookName, lossOfWords, lossStripWords, lossUnitName, lossWords,
    lotEventWords, lotFieldValue, lotFields, lotLifeWords, missingLabel, missingLabels,
    movingSavingWords, noBandWords, noFarmYet, pickEventWords, pickFields, pickOnWords,
    placeForCropWords, placeNowWords, placesPairWords, planMissing, printedLimit, probeCheckWords,
    readyWords, recordWords, refusalWords, refused, reviewKindName, reviewLooked, reviewNotes,
    reviewSentence, reviewSpanName, roomDayWords, roomNowWords, roomWarning, roomWords,
    sameLossWords, scoreWords, screens, shortWords, sourceWords, sowingWords, stopWords,
    storeAlarm, storeRefuses, storeTrouble, stripWords, suggestionWords, supplyWords, taskWords,
    title, todaySentence, traysThereWords, trialCaution, trialChangeWords, trialLimitWords,
    trialNotes, trialRowWords, trialWhy, trialWords, wantedSaid, weekWords, wholeFarm, why,
    withUnit, worthGroupName, worthHow, worthUnitWords, worthWords,
  } = language);
}

const loaded = new Map<string, Language>([['en', en]]);

/** Speaks what a farm asks for; at once where that language was spoken before. English if there is no such. */
export async function speakAs(told: {
  readonly language?: string | undefined;
  readonly units?: UnitsTold | undefined;
}): Promise<void> {
  const code = isLanguage(told.language) ? told.language : 'en';
  const language = loaded.get(code) ?? (await wholeLanguages[code]());
  loaded.set(code, language);
  speak(language, told.units);
}
