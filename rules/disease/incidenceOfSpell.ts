import { expectRange } from '../expectRange.ts';
import { type Celsius, HOUR, type Hours, hours, type Probability, probability } from '../units.ts';
import type { Bounds } from '../wetness/index.ts';
import { expectSpell, logistic } from './expectSpell.ts';
import { type PeakedRate, rateAt, rateBounds } from './rateBounds.ts';
import { type Spells, worstOfSpells } from './worstOfSpells.ts';

/** A logistic model of infection in which every wet hour adds by its temperature alone. */
export type IncidenceModel = PeakedRate & {
  /** y before any wet hour. */
  readonly start: number;
  /** Longest spell of the experiments, h; a longer one is extrapolated. null where not known. */
  readonly testedHours: number | null;
};

/**
 * Incidence after wet hours of changing temperature, 0..1: y is the start plus what each hour adds.
 * Exactly the published form where the temperature stays the same. Hours outside the model's
 * temperatures add nothing and do not end the spell; with none inside there is no infection.
 * @param wetTime stretches of wet time and their temperatures
 * @throws RangeError for hours or temperatures no garden has
 */
export function incidenceOfHours(
  wetTime: readonly { readonly hours: Hours | number; readonly temperature: Celsius }[],
  model: IncidenceModel,
): Probability {
  const sum = wetTime.reduce((total, stretch) => {
    expectSpell(stretch.temperature, stretch.hours);
    return total + stretch.hours * rateAt(model, stretch.temperature);
  }, 0);
  return probability(sum > 0 ? logistic(model.start + sum) : 0);
}

/**
 * Least and most incidence among spells at both bounds of wetness. Where the temperature is only
 * known to lie in a range, the least takes its worst for the fungus and the most its best.
 */
export function incidenceBounds(spells: Spells, model: IncidenceModel): Bounds {
  const incidence = (sum: number) => (sum > 0 ? logistic(model.start + sum) : 0);
  return worstOfSpells(spells, ({ pieces }) => {
    let [least, most] = [0, 0];
    for (const { from, to, coldest, warmest } of pieces) {
      const [slowest, fastest] = rateBounds(model, coldest, warmest);
      least += ((to - from) / HOUR) * slowest;
      most += ((to - from) / HOUR) * fastest;
    }
    return [incidence(least), incidence(most)];
  });
}

/**
 * Wet hours after which the index reaches a level at a steady temperature; null: never there.
 * @throws RangeError for a level the model starts above, or not below 1
 */
export function hoursToIncidence(
  temperature: Celsius,
  level: number,
  model: IncidenceModel,
): Hours | null {
  expectSpell(temperature, 0);
  expectRange('incidence', level, logistic(model.start), 1 - 1e-9, '');
  const rate = rateAt(model, temperature);
  if (rate <= 0) return null;
  return hours((Math.log(level / (1 - level)) - model.start) / rate);
}
