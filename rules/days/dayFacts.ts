import { botrytisFruitIncidence } from '../disease/index.ts';
import {
  type Celsius,
  type DegreeDays,
  HOUR,
  type Hours,
  hours,
  type Instant,
  MINUTE,
  type Probability,
  probability,
} from '../units.ts';
import { SpellBuilder, type WetReading, type WetSpell, walkWetness } from '../wetness/index.ts';
import { airFacts } from './airFacts.ts';

const USUAL_MAX_GAP = 90; // min; ours, as elsewhere for readings of air
const USUAL_MERGE_GAP = 4; // h; ours, between the 3 h of some and the 12 h of others

/** What one calendar day was like in one place. null is not known, never zero. */
export type DayFacts = {
  readonly min: Celsius | null;
  readonly max: Celsius | null;
  readonly mean: Celsius | null;
  readonly wetHours: Hours | null;
  readonly unknownHours: Hours;
  readonly longestSpellHours: Hours | null;
  readonly degreeDays: DegreeDays | null;
  readonly botrytisIndex: Probability | null;
};

export type DayRule = {
  readonly from: Instant;
  readonly to: Instant;
  /** Heat units count above it, °C. */
  readonly base: number;
  readonly wet: { readonly at: number; readonly below: number };
  readonly mergeGapHours?: number | undefined;
  readonly maxGapMinutes?: number | undefined;
};

/**
 * What a day was like. Readings may reach outside it: those of the evening before tell when a wet
 * spell began, those next to midnight join the day's ends. min, max and mean are of the readings in
 * the day; wet hours are cut to it; the longest spell is the longest that leaves had been wet at
 * any moment of the day, counted from the spell's own start, and the botrytis index is that of it.
 *
 * unknownHours is time of the day that no humidity reading speaks for; where there is no humidity
 * at all, time that no reading speaks for.
 * @param readings in order of time; null humidity where only temperature was read
 * @throws RangeError for readings not in order of time, or values outside what a probe can mean
 */
export function dayFacts(readings: readonly WetReading[], rule: DayRule): DayFacts {
  const { from, to, base, maxGapMinutes = USUAL_MAX_GAP } = rule;
  const air = airFacts(readings, { from, to, base, maxGap: maxGapMinutes * MINUTE });
  const wet = wetFacts(readings, rule, maxGapMinutes);
  const unknown = wet === null ? to - from - air.spoken : to - from - wet.known;
  return {
    min: air.min,
    max: air.max,
    mean: air.mean,
    wetHours: wet === null ? null : hours(wet.wet / HOUR),
    unknownHours: hours(Math.max(0, unknown) / HOUR),
    longestSpellHours: wet === null ? null : (wet.longest?.wetHours ?? hours(0)),
    degreeDays: air.degreeDays,
    botrytisIndex:
      wet === null
        ? null
        : wet.longest === null
          ? probability(0)
          : botrytisFruitIncidence(wet.longest.meanTemperature, wet.longest.wetHours),
  };
}

/** null when no humidity reading speaks for any of the day. */
function wetFacts(readings: readonly WetReading[], rule: DayRule, maxGapMinutes: number) {
  const { from, to, wet: limits, mergeGapHours = USUAL_MERGE_GAP } = rule;
  let longest: WetSpell | null = null;
  let wet = 0;
  let known = 0;
  const builder = new SpellBuilder(mergeGapHours, (spell) => {
    if (spell.to > from && spell.wetHours > (longest?.wetHours ?? 0)) longest = spell;
  });
  walkWetness(readings, { ...limits, maxGapMinutes }, (state, begins, ends, temperature) => {
    const until = Math.min(ends, to); // what came after midnight is the next day's
    builder.add(state, begins, until, temperature);
    const inside = until - Math.max(begins, from);
    if (state === 'unknown' || inside <= 0) return;
    known += inside;
    if (state === 'wet') wet += inside;
  });
  builder.end();
  return known === 0 ? null : { wet, known, longest: longest as WetSpell | null };
}
