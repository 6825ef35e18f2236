import { expectRange } from '../expectRange.ts';
import { expectProduce, handbookRate, q10Rate } from './agingRate.ts';

/** How long a crop keeps, and how much faster it ages when warmer. */
export type KeepingLife = {
  /** Temperature `life` is given for, °C. */
  readonly reference: number;
  /** How many times faster it ages 10 K warmer; 2 to 5 for most produce near 0..10 °C. */
  readonly q10: number;
  /** Days it keeps at the reference temperature. */
  readonly life: number;
};

/** Produce temperatures, °C, and the hours each lasted, oldest first. */
export type LifeHistory = readonly { readonly hours: number; readonly temperature: number }[];

/**
 * Hours of life at the reference temperature that a history used: the sum of rate x time.
 * Source: USDA Agriculture Handbook 66 (2016).
 * @param rate relative to the reference temperature
 * @throws RangeError for produce outside 0..35 °C, or hours below 0
 */
export function lifeUsed(history: LifeHistory, rate: (temperature: number) => number): number {
  let used = 0;
  for (const { hours, temperature } of history) {
    expectRange('hours', hours ?? Number.NaN, 0, 100_000, 'h');
    expectProduce('produce temperature', temperature ?? Number.NaN);
    used += hours * rate(temperature);
  }
  return used;
}

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
  history: LifeHistory,
  at: number = history.at(-1)?.temperature ?? reference,
): number {
  expectProduce('reference temperature', reference);
  expectRange('q10', q10, 1, 10, '');
  return lifeLeft(life, history, at, (temperature) => q10Rate(temperature, q10, reference));
}

function lifeLeft(
  life: number,
  history: LifeHistory,
  at: number,
  rate: (temperature: number) => number,
): number {
  expectRange('life', life, 0, 3650, 'd');
  expectProduce('temperature it will lie at', at);
  return Math.max(0, (24 * life - lifeUsed(history, rate)) / rate(at) / 24);
}

/**
 * The same by the rates that the handbook's example gives, which grow less where it is warmer.
 * @throws RangeError as remainingLife
 */
export function remainingLifePiecewise(
  { reference, life }: Pick<KeepingLife, 'reference' | 'life'>,
  history: LifeHistory,
  at: number = history.at(-1)?.temperature ?? reference,
): number {
  expectProduce('reference temperature', reference);
  const unit = handbookRate(reference);
  return lifeLeft(life, history, at, (temperature) => handbookRate(temperature) / unit);
}

const LEAST_USUAL = 2.5; // Handbook 66, Saltveit: 2.5 to 4 from 0 to 10 °C
const USUAL = 3; // the same, its worked column

/**
 * Days left by three ways of ageing that are as likely: Q10 of 3 and of 2.5, and the handbook's by
 * decades. Show the spread and not one of them.
 * @throws RangeError as remainingLife
 */
export function remainingLifeSpread(
  crop: Pick<KeepingLife, 'reference' | 'life'>,
  history: LifeHistory,
  at?: number,
): { readonly least: number; readonly most: number } {
  const days = [
    remainingLife({ ...crop, q10: USUAL }, history, at),
    remainingLife({ ...crop, q10: LEAST_USUAL }, history, at),
    remainingLifePiecewise(crop, history, at),
  ];
  return { least: Math.min(...days), most: Math.max(...days) };
}
