import { keptFrom, shownIn, shownUnit } from '../hub/words/page.ts';
import { numberOf } from './coolRoom/useSending.ts';
import { figure } from './setUp/figure.ts';

// Between what people type, in the units of the farm, and what is kept: °C, kg, money a kg. What was
// typed comes back as it was typed.

/** Kept figures that people type: a temperature, a difference, heat units, a weight, something a kg. */
export type Kept = '°C' | 'K' | '°C d' | 'kg' | '/kg';

/** Digits of a figure that was turned into another unit: those a scale or a thermometer shows. */
const DIGITS: Readonly<Record<Kept, number>> = { '°C': 2, K: 2, '°C d': 1, kg: 2, '/kg': 3 };

/** The number kept for what was typed; null for what is no number. */
export function keptOf(text: string, unit: Kept): number | null {
  const value = numberOf(text);
  return value === null ? null : turned(value, unit);
}

/** The same for a field of the farm's description: what is no number goes to the hub as it stands. */
export function keptFigure(text: string, unit: Kept): number | string | undefined {
  const value = figure(text);
  return typeof value === 'number' ? turned(value, unit) : value;
}

/** What stands in a field for a number that is kept; empty for none. */
export function typedOf(value: number | null | undefined, unit: Kept): string {
  if (value === null || value === undefined) return '';
  if (same(unit)) return String(value);
  return String(Number(shownIn(value, unit).toFixed(DIGITS[unit])));
}

const same = (unit: Kept) => shownUnit(unit) === unit;
const turned = (value: number, unit: Kept) => (same(unit) ? value : keptFrom(value, unit));
