import { expectRange } from '../expectRange.ts';
import type { Celsius } from '../units.ts';
import { type InfectionParameters, infectionHours } from './infectionHours.ts';

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
