import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';

/**
 * How many times faster a rate is 10 K warmer: (R2 / R1)^(10 / (T2 - T1)).
 * Source: USDA Agriculture Handbook 66 (2016), Saltveit, respiratory metabolism.
 * @throws RangeError for rates not above 0, temperatures outside -10..60 °C, or two alike
 */
export const q10From = orUnknown(function q10From(
  rate1: number,
  temperature1: number,
  rate2: number,
  temperature2: number,
): number {
  expectRange('rate', rate1, Number.MIN_VALUE, Number.MAX_VALUE, '');
  expectRange('rate', rate2, Number.MIN_VALUE, Number.MAX_VALUE, '');
  expectRange('temperature', temperature1, -10, 60, '°C');
  expectRange('temperature', temperature2, -10, 60, '°C');
  if (temperature1 === temperature2) {
    throw new RangeError(`Expected temperatures that differ, got ${temperature1} twice`);
  }
  return (rate2 / rate1) ** (10 / (temperature2 - temperature1));
});

/**
 * How much faster produce ages at `temperature` than at `reference`, with one Q10 for all of it.
 * Source: USDA Agriculture Handbook 66 (2016).
 * @throws RangeError for temperatures outside 0..35 °C or q10 outside 1..10
 */
export const q10Rate = orUnknown(function q10Rate(
  temperature: number,
  q10: number,
  reference: number = 0,
): number {
  expectProduce('temperature', temperature);
  expectProduce('reference temperature', reference);
  expectRange('q10', q10, 1, 10, '');
  return q10 ** ((temperature - reference) / 10);
});

/** Typical Q10 by decade of temperature, °C: least and most. Source: Handbook 66, Saltveit. */
export const TYPICAL_Q10 = [
  { from: 0, to: 10, least: 2.5, most: 4, usual: 3 },
  { from: 10, to: 20, least: 2, most: 2.5, usual: 2.5 },
  { from: 20, to: 30, least: 1.5, most: 2, usual: 2 },
  { from: 30, to: 40, least: 1, most: 1.5, usual: 1.5 },
] as const;

/**
 * How much faster produce respires at `temperature` than at 0 °C by the handbook's example, whose
 * Q10 falls from decade to decade: 1, 3, 7.5, 15, 22.5 at 0, 10, 20, 30, 40 °C. In between,
 * logarithms are joined by straight lines.
 * Source: USDA Agriculture Handbook 66 (2016), Saltveit, respiratory metabolism.
 * @throws RangeError for temperatures outside 0..40 °C
 */
export const handbookRate = orUnknown(function handbookRate(temperature: number): number {
  expectRange('temperature', temperature, 0, 40, '°C');
  return TYPICAL_Q10.reduce(
    (rate, { from, to, usual }) =>
      temperature <= from ? rate : rate * usual ** ((Math.min(temperature, to) - from) / 10),
    1,
  );
});

// Q10 is not valid in frozen produce, nor where heat kills it.
export const expectProduce = (what: string, got: number) => expectRange(what, got, 0, 35, '°C');
