export { accuracyPieces } from './accuracyPieces.ts';
export { type Bounds, cutTo, hoursWhen, wetHoursBounds } from './bounds.ts';
export { dryByMidMorning } from './dryByMidMorning.ts';
export { joinPieces } from './joinPieces.ts';
export { type LeavesNow, leavesWet } from './leavesWet.ts';
export { dampProbe, possiblyCreeping, sunStruck } from './probeFlags.ts';
export { type PieceSpell, spellBounds } from './spellBounds.ts';
export { SpellBuilder, type WetSpell } from './spellBuilder.ts';
export { layTap, type TapStretch, tapWetness, type WetTap } from './tapWetness.ts';
export { type LeafNote, type ThresholdTuning, tuneThreshold } from './tuneThreshold.ts';
export { type WetState, type WetVisitor, walkWetness } from './walkWetness.ts';
export { type WetPiece, type Window, wetPieces } from './wetPieces.ts';
export { leafWetRule, trayWetRule } from './wetPresets.ts';
export type { SpellRule, WetReading, WetRule } from './wetRule.ts';
export {
  type AirRead,
  type DepressionRule,
  type LeafProbeRead,
  type Sign,
  type SignReading,
  signsByDepression,
  signsByHumidity,
  signsByLeafProbe,
  usualDepression,
} from './wetSign.ts';
export { wetSpells } from './wetSpells.ts';
export { wetTime } from './wetTime.ts';
