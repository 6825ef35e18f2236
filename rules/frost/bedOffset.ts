import { median } from '../statistics/index.ts';
import { type Kelvin, kelvin } from '../units.ts';

/**
 * How much colder a bed gets than the air at screen height (1.2 to 2 m): the median of bed low
 * less screen low over clear, calm nights, K, usually negative; with how many nights that rests
 * on. null when none had both. Learned for each bed; 2 to 4 K is usual on clear nights (common
 * practice, no source), and up to about 10 K over snow (Brugge, reply in Weather).
 */
export function bedOffset(
  nights: readonly {
    readonly bed: number | null;
    readonly screen: number | null;
    readonly clearCalm: boolean | null;
  }[],
): { readonly offset: Kelvin; readonly nights: number } | null {
  const offsets = nights.flatMap(({ bed, screen, clearCalm }) =>
    clearCalm === true && bed !== null && screen !== null ? [bed - screen] : [],
  );
  if (offsets.length === 0) return null;
  return { offset: kelvin(median(offsets)), nights: offsets.length };
}
