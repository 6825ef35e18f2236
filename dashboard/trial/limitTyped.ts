import type { LimitNow } from '../../hub/contract/index.ts';
import { keptFrom, shownIn } from '../../hub/words/page.ts';
import { numberOf } from '../coolRoom/useSending.ts';
import { keptOf, typedOf } from '../typed.ts';

// A limit as it is typed, in the units of the farm; the hub is asked in its own.

type Typed = Pick<LimitNow, 'value' | 'unit' | 'step' | 'min' | 'max'>;
const warmth = ({ unit }: Pick<Typed, 'unit'>) => unit === '°C';
/** Steps of tenths leave no dust behind. */
const tidy = (value: number) => Math.round(value * 100) / 100;

/** What stands in the field before anybody typed. */
export const shownOf = (limit: Typed): string =>
  warmth(limit) ? typedOf(limit.value, '°C') : String(limit.value);

/** What was typed, in the hub's unit; null for what is no number. */
export const limitOf = (limit: Typed, text: string): number | null =>
  warmth(limit) ? keptOf(text, '°C') : numberOf(text);

/** A big step in the unit shown: of degrees, whole ones wherever the hub's are turned into others. */
function stepShown({ unit, step }: Typed): number {
  if (unit !== '°C') return step;
  const shown = shownIn(step, 'K');
  return shown === step ? step : Math.max(1, Math.round(shown));
}
/** The same in the hub's unit: a difference, where it is one of degrees. */
export const stepOf = (limit: Typed): number =>
  warmth(limit) ? keptFrom(stepShown(limit), 'K') : limit.step;

/** What stands in the field after some steps up or down, within what may be tried. */
export function movedBy(limit: Typed, text: string, steps: number): string {
  const shown = (value: number) => (warmth(limit) ? shownIn(value, '°C') : value);
  const next = (numberOf(text) ?? shown(limit.value)) + steps * stepShown(limit);
  return String(tidy(Math.min(shown(limit.max), Math.max(shown(limit.min), next))));
}
