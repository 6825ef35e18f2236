import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';

export type TrayCrop = {
  readonly revenue: number;
  /** What it cost apart from labour and the place: seed, medium, packing. */
  readonly directCost: number;
  /** m² that one tray takes. */
  readonly area: number;
  readonly days: number;
};

/**
 * What a tray earns for the place it takes, money per m² and day: (revenue - direct cost) / (area x
 * days). null, no figure, when it takes no place or no time. Rank crops by what is scarcer, place
 * or labour, and show both.
 * Common practice, no source.
 * @throws RangeError for negative money, area outside 0..10,000 m² or days outside 0..3650
 */
export const valuePerAreaDay = orUnknownField(function valuePerAreaDay(
  tray: TrayCrop,
): number | null {
  const { revenue, directCost, area, days } = tray;
  expectMoney('revenue', revenue);
  expectMoney('direct cost', directCost);
  expectRange('area', area, 0, 10_000, 'm²');
  expectRange('days', days, 0, 3650, 'd');
  const areaDays = area * days;
  return areaDays === 0 ? null : (revenue - directCost) / areaDays;
});

/**
 * The same for the labour it takes, money per hour; null when it takes none.
 * Common practice, no source.
 * @throws RangeError for negative money or minutes outside 0..100,000
 */
export const valuePerLabourHour = orUnknownField(function valuePerLabourHour(tray: {
  readonly revenue: number;
  readonly directCost: number;
  readonly labourMinutes: number;
}): number | null {
  const { revenue, directCost, labourMinutes } = tray;
  expectMoney('revenue', revenue);
  expectMoney('direct cost', directCost);
  expectRange('labour', labourMinutes, 0, 100_000, 'min');
  return labourMinutes === 0 ? null : (revenue - directCost) / (labourMinutes / 60);
});

export const expectMoney = (what: string, got: number) =>
  expectRange(what, got, 0, Number.MAX_VALUE, 'of money');
