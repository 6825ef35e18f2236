import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';
import { expectMoney } from './valuePerAreaDay.ts';

/** One batch from seed to sale, as the grower wrote it down. */
export type BatchMoney = {
  readonly trays: number;
  /** Days its trays stood, from sowing to clearing. */
  readonly days: number;
  /** Cut or picked, kg. */
  readonly kilograms: number;
  /** Of that not sold, kg. */
  readonly lost: number;
  /** Money per kg sold. */
  readonly price: number;
  /** Seed, for the whole batch. */
  readonly seed: number;
  /** Medium, tray wear and packing, for the whole batch. */
  readonly other: number;
  /** Sowing, watering, moving, cutting, packing. */
  readonly minutes: number;
};

/** What a batch brought, before the wage of those who worked on it. */
export type BatchEarnings = {
  /** Revenue less seed and other cost; below 0 it brought less than it took. */
  readonly earned: number;
  readonly trayDays: number;
  readonly hours: number;
  /** null where there were no trays, no days or no labour. */
  readonly perTray: number | null;
  readonly perTrayDay: number | null;
  readonly perHour: number | null;
};

/**
 * Earnings of a batch: (cut - lost) x price - seed - other; per tray, per tray and day of space, and
 * per hour of work. Unknown in, unknown out: a weight that nobody wrote down is not zero.
 * Common practice, no source.
 * @throws RangeError for amounts below 0, or more lost than was cut
 */
export const batchEarnings = orUnknownField(function batchEarnings(
  batch: BatchMoney,
): BatchEarnings {
  const { trays, days, kilograms, lost, price, seed, other, minutes } = batch;
  expectRange('trays', trays, 0, 1_000_000, '');
  expectRange('days', days, 0, 3650, 'd');
  expectRange('cut weight', kilograms, 0, 10_000_000, 'kg');
  expectRange('lost weight', lost, 0, kilograms, 'kg');
  expectMoney('price', price);
  expectMoney('seed', seed);
  expectMoney('other cost', other);
  expectRange('labour', minutes, 0, 10_000_000, 'min');
  const earned = (kilograms - lost) * price - seed - other;
  const trayDays = trays * days;
  const hours = minutes / 60;
  const per = (amount: number) => (amount === 0 ? null : earned / amount);
  return {
    earned,
    trayDays,
    hours,
    perTray: per(trays),
    perTrayDay: per(trayDays),
    perHour: per(hours),
  };
});

/**
 * Price per kg sold at which a batch just pays its labour: (seed + other + hours x wage) / kg sold.
 * null, no figure, when nothing is sold.
 * Common practice, no source; costPerKilogramSold says the same of a harvest.
 * @throws RangeError as batchEarnings, or for a negative wage
 */
export const breakEvenPrice = orUnknownField(function breakEvenPrice(
  batch: Omit<BatchMoney, 'price' | 'trays' | 'days'> & { readonly wage: number },
): number | null {
  const { kilograms, lost, seed, other, minutes, wage } = batch;
  expectRange('cut weight', kilograms, 0, 10_000_000, 'kg');
  expectRange('lost weight', lost, 0, kilograms, 'kg');
  expectMoney('seed', seed);
  expectMoney('other cost', other);
  expectRange('labour', minutes, 0, 10_000_000, 'min');
  expectMoney('wage', wage);
  const sold = kilograms - lost;
  return sold === 0 ? null : (seed + other + (minutes / 60) * wage) / sold;
});
