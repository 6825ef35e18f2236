export { type LeavesNow, leavesWet } from './leavesWet.ts';
export { SpellBuilder, type WetSpell } from './spellBuilder.ts';
export { type WetState, type WetVisitor, walkWetness } from './walkWetness.ts';
export type { SpellRule, WetReading, WetRule } from './wetRule.ts';
export { wetSpells } from './wetSpells.ts';
export { wetTime } from './wetTime.ts';
