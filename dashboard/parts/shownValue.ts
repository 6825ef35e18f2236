import { shownIn, shownUnit } from '../../hub/words/page.ts';
import { farm } from '../state.ts';
import { when } from '../times.ts';
import { words } from '../words.ts';

export type Held = { readonly zone: string; readonly now: number };

/** Whether nothing stands behind the point, in the unit that is shown. */
export const wholeIn = (value: number | null, unit: string) =>
  value !== null && Number.isInteger(Number(shownIn(value, unit).toFixed(9)));

const INSTANT = /^\d{4}-\d{2}-\d{2}T/;

/** A value of a task's reasons as it is read, in its unit; a time in the farm's zone. */
export function shownValue(
  value: number | string | null,
  unit: string,
  { zone, now }: Held,
): string {
  if (typeof value === 'string') {
    return INSTANT.test(value) ? when(Date.parse(value), zone, now) : value;
  }
  if (value !== null && unit === 'probability') return words.chance(value);
  if (value !== null && unit === 'min') return words.span(value * 60_000);
  if (value !== null && unit === 'h') return words.span(value * 3_600_000);
  if (value !== null && unit === 'money' && farm.value) return words.money(value, farm.value.money);
  return words.withUnit(value, unit, wholeIn(value, unit) ? 0 : 1);
}

/** The same for a number put into a formula: with all the digits that were put in. */
export function shownInput(value: number | string | null, unit: string, held: Held): string {
  if (typeof value === 'string') return shownValue(words.how.inputValue(value), unit, held);
  if (value === null) return words.notKnown;
  const told = String(value).split('.')[1]?.length ?? 0;
  // Turned into another unit a figure has a digit more, unless it is whole there.
  const digits = shownUnit(unit) === unit || wholeIn(value, unit) ? told : Math.max(1, told);
  return words.withUnit(value, unit === 'money' ? (farm.value?.money ?? '') : unit, digits);
}
