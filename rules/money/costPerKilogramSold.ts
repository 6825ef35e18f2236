import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { orUnknownField } from '../orUnknownField.ts';
import { expectMoney } from './valuePerAreaDay.ts';

export type HarvestCost = {
  readonly harvestKilograms: number;
  /** Share of the harvest that is not sold, 0 to below 1. */
  readonly lossShare: number;
  readonly fixed: number;
  /** All hours, picking and packing among them. */
  readonly hours: number;
  readonly wage: number;
  /** For each kg sold. */
  readonly packingPerKilogram: number;
};

/**
 * What a kilogram *sold* costs, and so the price at which it breaks even: (fixed + hours x wage +
 * packing) / (harvest x (1 - loss)). Divided by the harvest it would look cheaper than it is. null,
 * no figure, when nothing is sold.
 * Common practice, no source.
 * @throws RangeError for negative money, hours or weight, or a loss outside 0..1
 */
export const costPerKilogramSold = orUnknownField(function costPerKilogramSold(
  harvest: HarvestCost,
): number | null {
  const { harvestKilograms, lossShare, fixed, hours, wage, packingPerKilogram } = harvest;
  expectRange('harvest', harvestKilograms, 0, 10_000_000, 'kg');
  expectRange('loss', lossShare, 0, 1, '');
  expectMoney('fixed cost', fixed);
  expectRange('hours', hours, 0, 1_000_000, 'h');
  expectMoney('wage', wage);
  expectMoney('packing', packingPerKilogram);
  const sold = harvestKilograms * (1 - lossShare);
  return sold === 0 ? null : (fixed + hours * wage + packingPerKilogram * sold) / sold;
});

/**
 * Hours a harvest takes, picking at a speed and the rest.
 * @param speed kg an hour
 * @throws RangeError for a weight or time below 0, or a speed not above 0
 */
export const harvestHours = orUnknown(function harvestHours(
  kilograms: number,
  speed: number,
  otherHours: number,
): number {
  expectRange('harvest', kilograms, 0, 10_000_000, 'kg');
  expectRange('picking speed', speed, Number.MIN_VALUE, 100_000, 'kg/h');
  expectRange('other hours', otherHours, 0, 1_000_000, 'h');
  return kilograms / speed + otherHours;
});

/**
 * What is left of a price after its cost, for each kg; below 0 it is sold at a loss.
 * @throws RangeError for negative money
 */
export const contribution = orUnknown(function contribution(price: number, cost: number): number {
  expectMoney('price', price);
  expectMoney('cost', cost);
  return price - cost;
});
