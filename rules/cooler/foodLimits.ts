import type { Celsius, Hours } from '../units.ts';
import { celsius, hours } from '../units.ts';

/** What one country's rules print. Read it with the local officer: none applies by itself. */
export type FoodLimit = {
  /** Terms that hub/words turns into words. */
  readonly where: string;
  readonly what: string;
  readonly limit: Celsius;
  readonly of: 'food' | 'any';
  /** Cumulative time above it after which the rule asks for something; null where none is printed. */
  readonly clock: Hours | null;
  readonly then: 'use-or-chill' | 'discard' | null;
  readonly source: string;
};

const FDA = 'FDA Food Code since 2009; program manual of 7 July 2010';
const FSA = 'Food Standards Agency, May 2016, by summaries; Scotland differs';
const FSANZ = 'FSANZ Standard 3.2.2, by agency summaries';
const WHO = 'WHO Five Keys to Safer Food';

/**
 * Printed limits to choose from when a clock is set up. Whole produce is often outside such rules,
 * cut or bagged leaves often inside, sprouts apart: the officer decides. Codex CXC 53-2003 gives
 * duties of hygiene and no one number (from memory).
 */
export const foodLimits: readonly FoodLimit[] = [
  of('united-states', 'cut-leafy-greens', 5, 'food', null, null, FDA),
  of('england-wales-northern-ireland', 'supports-pathogens', 8, 'food', 4, 'discard', FSA),
  of('australia', 'potentially-hazardous', 5, 'food', 2, 'use-or-chill', FSANZ),
  of('australia', 'potentially-hazardous', 5, 'food', 4, 'discard', FSANZ),
  of('world-health-organization', 'cooked-and-perishable', 5, 'any', 2, null, WHO),
];

function of(
  where: string,
  what: string,
  limit: number,
  whose: FoodLimit['of'],
  clock: number | null,
  then: FoodLimit['then'],
  source: string,
): FoodLimit {
  return {
    where,
    what,
    limit: celsius(limit),
    of: whose,
    clock: clock === null ? null : hours(clock),
    then,
    source,
  };
}
