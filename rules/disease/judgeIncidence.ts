import { dayOfSpells, riskOfBounds } from './dayOfSpells.ts';
import { type IncidenceModel, incidenceBounds } from './incidenceOfSpell.ts';
import { type Circumstances, fact, type Judgement, verdictOfRisk } from './judgement.ts';
import { classOfIncidence, EVENT_INCIDENCE } from './riskClass.ts';

/** Judges a disease day by the worst of its spells under a model of incidence. */
export function judgeIncidence(
  known: Circumstances,
  model: IncidenceModel,
  source: string,
): Judgement {
  const day = dayOfSpells(known);
  const bounds = incidenceBounds(day.spells, model);
  const risk = riskOfBounds(bounds, classOfIncidence, day);
  const longest = day.spells.most.reduce((most, { wetHours }) => Math.max(most, wetHours), 0);
  const because = [
    fact('incidence-least', bounds[0], '', EVENT_INCIDENCE, source),
    fact('incidence-most', bounds[1], '', EVENT_INCIDENCE, source),
    fact('wet-hours-least', day.wetHours[0], 'h', null, source),
    fact('wet-hours-most', day.wetHours[1], 'h', null, source),
    fact('unknown-hours', day.unknownHours, 'h', null, source),
  ];
  if (model.testedHours !== null && longest > model.testedHours) {
    because.push(fact('beyond-tested-hours', longest, 'h', model.testedHours, source));
  }
  const verdict = verdictOfRisk(risk);
  return { verdict, risk, because, missing: verdict === 'unknown' ? ['leaf-wetness-history'] : [] };
}
