import { expectRange } from '../expectRange.ts';
import { type Celsius, celsius, HOUR } from '../units.ts';
import type { Bounds } from '../wetness/index.ts';
import { type InfectionParameters, infectionHours, neededHours } from './infectionHours.ts';
import { rateBounds } from './rateBounds.ts';
import { type Spells, worstOfSpells } from './worstOfSpells.ts';

/**
 * How far an infection has come through wet hours of changing temperature: each piece of wet time
 * adds its share of the hours needed at its temperature. 1 or more is enough for infection. Made
 * for one wet spell; a new spell starts at 0.
 *
 * The usual extension of Magarey, Sutton & Thayer 2005 to changing temperatures (ours, not theirs).
 * @throws RangeError as infectionHours, or for negative hours
 */
export function infectionProgress(
  wetTime: readonly { readonly hours: number; readonly temperature: Celsius }[],
  parameters: InfectionParameters,
): number {
  return wetTime.reduce((sum, { hours, temperature }) => {
    expectRange('wet hours', hours, 0, 8784, 'h');
    const needed = infectionHours(temperature, parameters);
    return needed === null ? sum : sum + hours / needed;
  }, 0);
}

/**
 * Least and most progress among spells at both bounds of wetness; each spell starts at 0. Where the
 * temperature is only known to lie in a range, the least takes its worst for the pathogen and the
 * most its best.
 */
export function progressBounds(spells: Spells, parameters: InfectionParameters): Bounds {
  const shape = {
    rate: (temperature: number) => {
      const needed = neededHours(celsius(temperature), parameters);
      return needed === null ? 0 : 1 / needed;
    },
    peak: parameters.optimum,
    coldest: parameters.min,
    hottest: parameters.max,
  };
  return worstOfSpells(spells, ({ pieces }) => {
    let [least, most] = [0, 0];
    for (const { from, to, coldest, warmest } of pieces) {
      const [slowest, fastest] = rateBounds(shape, coldest, warmest);
      least += (to - from) * slowest;
      most += (to - from) * fastest;
    }
    return [least / HOUR, most / HOUR];
  });
}
