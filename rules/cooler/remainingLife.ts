import { expectRange } from '../expectRange.ts';

/** How long a crop keeps, and how much faster it ages when warmer. */
export type KeepingLife = {
  /** Temperature `life` is given for, °C. */
  readonly reference: number;
  /** How many times faster it ages 10 K warmer; 2 to 5 for most produce near 0..10 °C. */
  readonly q10: number;
  /** Days it keeps at the reference temperature. */
  readonly life: number;
};

/**
 * Days a lot will still keep at `at` °C, given how warm it has been; 0 when its life is used up.
 * `at` is the last temperature of its history when not given: where the lot lies now. Without a
 * history that is the reference, and the whole life is left.
 *
 * Life used is the sum of q10^((T - reference) / 10) over time. Source: the Q10 rule as in USDA
 * Agriculture Handbook 66 (Gross, Wang & Saltveit 2016). A ranking, not a promise: below a crop's
 * freezing or chilling limit it does not hold, and wilting is not in it.
 * @param history produce temperatures, °C, and the hours each lasted, oldest first
 * @throws RangeError for produce outside 0..35 °C, q10 outside 1..10, life or hours below 0
 */
export function remainingLife(
  { reference, q10, life }: KeepingLife,
  history: readonly { readonly hours: number; readonly temperature: number }[],
  at: number = history.at(-1)?.temperature ?? reference,
): number {
  expectProduce('reference temperature', reference);
  expectRange('q10', q10, 1, 10, '');
  expectRange('life', life, 0, 3650, 'd');
  expectProduce('temperature it will lie at', at);

  const speed = (temperature: number) => q10 ** ((temperature - reference) / 10);
  let used = 0; // hours at the reference temperature
  for (const { hours, temperature } of history) {
    expectRange('hours', hours, 0, 100_000, 'h');
    expectProduce('produce temperature', temperature);
    used += hours * speed(temperature);
  }
  return Math.max(0, (24 * life - used) / speed(at) / 24);
}

// Q10 is not valid in frozen produce, nor where heat kills it.
const expectProduce = (what: string, got: number) => expectRange(what, got, 0, 35, '°C');
