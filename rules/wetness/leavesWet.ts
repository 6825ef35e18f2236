import { type Instant, instant, MINUTE } from '../units.ts';
import { SpellBuilder, type WetSpell } from './spellBuilder.ts';
import { type WetState, walkWetness } from './walkWetness.ts';
import { type SpellRule, USUAL_MAX_GAP, type WetReading } from './wetRule.ts';

/** Whether leaves are wet now. */
export type LeavesNow = {
  /** null: the newest reading is too old to say. */
  readonly wet: boolean | null;
  /** When they became so, as far as readings reach back without a gap; null when not known. */
  readonly since: Instant | null;
  /** The wet spell that is going on, short dry breaks included; null when none is. */
  readonly spell: WetSpell | null;
};

/**
 * Whether leaves are wet at `now`, since when, and the spell that is going on. Readings after
 * `now` are left out. A spell still stands while leaves have been dry, or silent, for less than
 * `mergeGapHours`.
 * @throws RangeError as walkWetness
 */
export function leavesWet(
  readings: readonly WetReading[],
  rule: SpellRule,
  now: Instant,
): LeavesNow {
  const soFar = readings.filter(({ t, humidity }) => t <= now && humidity !== null);
  const newest = soFar.at(-1);
  const builder = new SpellBuilder(rule.mergeGapHours, () => {});
  let last: WetState = 'unknown';
  let since = 0;
  let until: number = now;
  walkWetness(soFar, rule, (state, from, to, temperature) => {
    const cut = Math.min(to, now); // the newest reading does not speak for time to come
    builder.add(state, from, cut, temperature);
    if (state !== last) since = from;
    last = state;
    until = cut;
  });
  if (newest === undefined) return { wet: null, since: null, spell: null };

  if (now > until) builder.add('unknown', until, now, newest.temperature);
  const spell = builder.standing();
  if (now - newest.t > (rule.maxGapMinutes ?? USUAL_MAX_GAP) * MINUTE) {
    return { wet: null, since: null, spell };
  }
  return { wet: (last as WetState) === 'wet', since: instant(since), spell };
}
