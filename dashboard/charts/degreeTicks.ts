import { keptFrom, shownIn } from '../../hub/words/page.ts';
import { words } from '../words.ts';
import { ticks } from './scale.ts';

/** Lines of a temperature axis, round in the unit that is read: where they lie in °C, and their names. */
export const degreeTicks = (low: number, high: number, wanted: number) =>
  ticks(shownIn(low, '°C'), shownIn(high, '°C'), wanted).map((shown) => ({
    value: keptFrom(shown, '°C'),
    label: words.number(shown, 0),
  }));
