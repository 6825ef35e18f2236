import { HOUR } from '../../rules/units.ts';
import type { Stay } from '../batches/index.ts';
import type { Calendar } from '../clock.ts';
import { type HeatRule, ruleKey } from './heatRule.ts';
import { type LightHours, lightOf } from './lightOf.ts';
import { type PieceHeat, type PieceParts, pieceHeat } from './pieceHeat.ts';

/** After this a day's last readings are joined to the next day's first. Ours, as for days. */
const JOINED = 2 * HOUR;

/** Heat (and light) that plants went through. */
export type Lived = {
  /** °C d, with what is guessed for the unknown hours; null where nobody knows and nothing tells. */
  readonly degreeDays: number | null;
  readonly unknownHours: number;
  /** Mean of the days, mol m⁻² d⁻¹; null where no probe measures light. */
  readonly lightPerDay: number | null;
  /** Of what was guessed, (°C d)²: to be added to that of a prediction. */
  readonly variance: number;
  /** Filled in from another probe of the place; and counted from hourly roll-ups. */
  readonly filledHours: number;
  readonly rolledHours: number;
};

/** What a day there brings where it was not measured: units and their standard deviation. */
export type GuessDay = (
  place: string,
  rule: HeatRule,
  day: string,
) => { readonly degreeDays: number; readonly sd: number } | null;

export type HeatParts = PieceParts & {
  readonly calendar: () => Calendar;
  readonly now: () => number;
};
type Kept = {
  readonly from: number;
  readonly to: number;
  readonly byRule: Map<string, PieceHeat>;
  light?: LightHours;
};
export type Heat = ReturnType<typeof makeHeat>;

/** Counts heat of places day by day; days that are over are counted once, until their readings change. */
export function makeHeat(parts: HeatParts, guess: GuessDay) {
  const { calendar, now } = parts;
  const kept = new Map<string, Map<string, Kept>>();
  /** Reading a day costs more than counting it: each is counted by all rules asked for so far. */
  const rules = new Map<string, HeatRule>();

  const entryOf = (place: string, from: number, to: number): Kept => {
    const own = kept.get(place) ?? new Map<string, Kept>();
    kept.set(place, own);
    const key = `${from}:${to}`;
    const known = own.get(key);
    if (known) return known;
    const made: Kept = { from, to, byRule: new Map() };
    if (to + JOINED <= now()) own.set(key, made);
    return made;
  };

  /** One day, or part of it, of one place. */
  const piece = (place: string, rule: HeatRule, from: number, to: number): PieceHeat => {
    const key = ruleKey(rule);
    rules.set(key, rule);
    const { byRule } = entryOf(place, from, to);
    const known = byRule.get(key);
    if (known) return known;
    const wanted = [...rules].flatMap(([name, one]) => (byRule.has(name) ? [] : [one]));
    for (const [name, made] of pieceHeat(parts, place, from, to, wanted)) byRule.set(name, made);
    return byRule.get(key) as PieceHeat;
  };

  const lightIn = (place: string, from: number, to: number): LightHours => {
    const entry = entryOf(place, from, to);
    entry.light ??= lightOf(parts, place, from, to);
    return entry.light;
  };

  /** Visits the days, or parts of days, that plants stood at each place. */
  const pieces = function* (stays: readonly Stay[], from: number, to: number) {
    for (const [index, { place, from: since }] of stays.entries()) {
      const leaves = Math.min(to, stays[index + 1]?.from ?? to);
      let begins = Math.max(from, index === 0 ? from : since);
      while (begins < leaves) {
        const day = calendar().dayOf(begins);
        const ends = Math.min(leaves, calendar().bounds(day).ends);
        yield { place, day, begins, ends };
        begins = ends;
      }
    }
  };

  return {
    piece,
    /** A whole day of a place, as far as it is known; null where its readings do not tell it. */
    day(place: string, rule: HeatRule, day: string): number | null {
      const { begins, ends } = calendar().bounds(day);
      const { hidden, degreeDays, unknownHours } = piece(place, rule, begins, ends);
      const hours = (ends - begins) / HOUR;
      return hidden || unknownHours >= hours ? null : (degreeDays * hours) / (hours - unknownHours);
    },
    /**
     * Heat and light that plants went through at the places they stood at. Hours without readings are
     * counted in `unknownHours`, and what they usually bring is put in for them.
     */
    lived(stays: readonly Stay[], from: number, to: number, rule: HeatRule): Lived {
      const until = Math.min(to, now());
      let [known, variance, unknownHours, filledHours, rolledHours] = [0, 0, 0, 0, 0];
      let [light, lightHours] = [0, 0];
      let told = true;
      for (const { place, day, begins, ends } of pieces(stays, from, until)) {
        const hours = (ends - begins) / HOUR;
        const found = piece(place, rule, begins, ends);
        unknownHours += found.unknownHours;
        filledHours += found.filledHours;
        rolledHours += found.rolledHours;
        const lit = lightIn(place, begins, ends);
        light += lit.moles;
        lightHours += lit.hours;
        // Where gaps hide what makes a day warm or cold, its date tells more than the rest of it.
        const missing = found.hidden ? hours : found.unknownHours;
        if (!found.hidden) known += found.degreeDays;
        if (missing <= 0) continue;
        const usual = guess(place, rule, day);
        if (usual === null) {
          if (found.unknownHours >= hours) told = false;
          else if (found.hidden) known += found.degreeDays;
          continue;
        }
        known += (usual.degreeDays * missing) / 24;
        variance += ((usual.sd * missing) / 24) ** 2;
      }
      return {
        degreeDays: told ? known : null,
        lightPerDay: lightHours >= 24 ? (light / lightHours) * 24 : null,
        ...{ unknownHours, variance, filledHours, rolledHours },
      };
    },
    /** Readings of a place changed: what was counted of them is counted again when asked. */
    drop(place: string | null, from: number, to: number) {
      if (place === null) kept.clear();
      const own = place === null ? undefined : kept.get(place);
      for (const [key, one] of own ?? []) if (one.from <= to && one.to >= from) own?.delete(key);
    },
  };
}
