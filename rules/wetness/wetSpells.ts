import { SpellBuilder, type WetSpell } from './spellBuilder.ts';
import { walkWetness } from './walkWetness.ts';
import type { SpellRule, WetReading } from './wetRule.ts';

/**
 * The wet spells in a series of canopy readings, oldest first. One pass.
 *
 * Only time known to be wet counts as wet; a gap inside a spell is its unknownHours, and a gap as
 * long as `mergeGapHours` ends it.
 * @throws RangeError for readings not in order of time, humidity above 0..105 %, or a rule whose
 *   `below` is above `at`
 */
export function wetSpells(readings: readonly WetReading[], rule: SpellRule): WetSpell[] {
  const spells: WetSpell[] = [];
  const builder = new SpellBuilder(rule.mergeGapHours, (spell) => spells.push(spell));
  walkWetness(readings, rule, (state, from, to, temperature) =>
    builder.add(state, from, to, temperature),
  );
  builder.end();
  return spells;
}
