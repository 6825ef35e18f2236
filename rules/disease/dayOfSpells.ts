import { HOUR } from '../units.ts';
import {
  type Bounds,
  cutTo,
  type PieceSpell,
  spellBounds,
  wetHoursBounds,
} from '../wetness/index.ts';
import type { Circumstances } from './judgement.ts';
import { type RiskClass, type RiskRange, riskRange } from './riskClass.ts';
import type { Spells } from './worstOfSpells.ts';

/** What the wetness of one disease day comes to. */
export type DayOfSpells = {
  /** Spells that reach into the day, from their own start, up to the day's end. */
  readonly spells: Spells;
  readonly wetHours: Bounds;
  readonly unknownHours: number;
  /** Under half of the day is known: then no class is given. */
  readonly tooLittleKnown: boolean;
};

const KNOWN_SHARE = 0.5; // ours

export function dayOfSpells({ day, wetness }: Circumstances, mergeGapHours?: number): DayOfSpells {
  const upToEnd = cutTo(wetness, { from: wetness[0]?.from ?? day.from, to: day.to });
  const spells = spellBounds(upToEnd, mergeGapHours);
  const reaches = ({ to }: PieceSpell) => to > day.from;
  const least = spells.least.filter(reaches);
  const inDay = cutTo(wetness, day);
  const covered = inDay.reduce((sum, { from, to }) => sum + to - from, 0) / HOUR;
  const [wet, perhapsWet] = wetHoursBounds(inDay);
  const length = (day.to - day.from) / HOUR;
  // Time that no piece speaks for at all may be wet too.
  const unknownHours = perhapsWet - wet + length - covered;
  return {
    spells: { least, most: spells.most === spells.least ? least : spells.most.filter(reaches) },
    wetHours: [wet, wet + unknownHours],
    unknownHours,
    tooLittleKnown: length - unknownHours < KNOWN_SHARE * length,
  };
}

/** Both bounds as classes; unknown when too little of the day is known. */
export function riskOfBounds(
  [least, most]: Bounds,
  classOf: (value: number) => RiskClass,
  { tooLittleKnown }: DayOfSpells,
): RiskRange {
  return tooLittleKnown ? 'unknown' : riskRange(classOf(least), classOf(most));
}
