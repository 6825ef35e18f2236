import { farm } from '../state.ts';
import { words } from '../words.ts';
import { wholeIn } from './shownValue.ts';

/** A figure the planner rests on, in its unit. */
export function shownFigure(value: number | null, unit: string): string {
  if (value === null) return words.notKnown;
  if (unit === 'probability') return words.withUnit(100 * value, '%', value < 0.1 ? 1 : 0);
  if (unit === 'money') return words.withUnit(value, farm.value?.money ?? '', 2);
  return words.withUnit(value, unit, wholeIn(value, unit) ? 0 : 1);
}
