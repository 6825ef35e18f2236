import type { AlarmSettings, Rank } from './types.ts';

const HOUR = 3_600_000; // ms

/**
 * A cool room that fails, a door that stands open and frost on its way cannot wait. A probe that
 * fell silent is unknown, not an alarm of its own: told in waking hours. Ours.
 */
export const usualRanks: Readonly<Record<string, Rank>> = {
  warm: 'urgent',
  power: 'urgent',
  unit: 'urgent',
  door: 'urgent',
  frost: 'urgent',
  probe: 'today',
};

/** Produce over its limit and frost: always urgent, and silenced for two hours at the most. */
export const GUARDED: ReadonlySet<string> = new Set(['warm', 'frost']);

// Common practice, no source (rules/cooler alarmYardsticks: shelved-longest, product-shelved-longest).
export const LONGEST_SILENCE = 12 * HOUR;
export const LONGEST_GUARDED = 2 * HOUR;

export const rankOf = (kind: string, { ranks }: Pick<AlarmSettings, 'ranks'>): Rank =>
  GUARDED.has(kind) ? 'urgent' : (ranks[kind] ?? usualRanks[kind] ?? 'urgent');

/** The same for a hub that nobody has set up: nobody to tell, everything shown. */
export const usualSettings: AlarmSettings = {
  people: [],
  waits: { second: 10, third: 20, everybody: 30 }, // min; the first two common practice, no source
  ranks: usualRanks,
  quiet: { from: 21 * 60, to: 6 * 60 + 30 }, // ours
  most: 6, // ours: an hour with more is one trouble, not seven
  weeklyTest: null,
};
