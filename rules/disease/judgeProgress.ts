import { type DayOfSpells, dayOfSpells, riskOfBounds } from './dayOfSpells.ts';
import type { InfectionParameters } from './infectionHours.ts';
import { progressBounds } from './infectionProgress.ts';
import { type Circumstances, fact, type Judgement, verdictOfRisk } from './judgement.ts';
import { classOfProgress } from './riskClass.ts';

const ENOUGH = 1; // a whole infection

/**
 * Judges a disease day by how far the worst of its spells brought an infection: the generic model
 * of Magarey, Sutton & Thayer 2005 (Phytopathology 95:92), summed over changing temperature.
 * @param day the same day's spells, where they were already gathered
 */
export function judgeProgress(
  known: Circumstances,
  parameters: InfectionParameters & { readonly source: string },
  day: DayOfSpells = dayOfSpells(known),
): Judgement {
  const bounds = progressBounds(day.spells, parameters);
  const risk = riskOfBounds(bounds, classOfProgress, day);
  const verdict = verdictOfRisk(risk);
  const { source } = parameters;
  return {
    verdict,
    risk,
    because: [
      fact('infection-progress-least', bounds[0], '', ENOUGH, source),
      fact('infection-progress-most', bounds[1], '', ENOUGH, source),
      fact('unknown-hours', day.unknownHours, 'h', null, source),
    ],
    missing: verdict === 'unknown' ? ['leaf-wetness-history'] : [],
  };
}
