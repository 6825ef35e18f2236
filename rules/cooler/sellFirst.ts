import { expectRange } from '../expectRange.ts';
import type { Instant } from '../units.ts';

export type StoredLot = {
  readonly id: string;
  /** Estimated life left at the room's temperature, d; null without a temperature history. */
  readonly daysLeft: number | null;
  readonly kilograms: number | null;
  readonly pricePerKilogram: number | null;
  readonly storedAt: Instant;
};

export type LotInTurn = {
  readonly id: string;
  /** Life left less days to the next sale; null when life is not known. */
  readonly slack: number | null;
  readonly money: number | null;
  readonly because: 'over-before-sale' | 'no-history' | 'least-slack';
};

/**
 * The order in which lots should be sold: first those that will not last until the next sale (they
 * need a decision today), then those without a temperature history, first in first out, so that
 * what nobody knows is not left to the end; then the rest by slack. Equal ones by the money at
 * stake, more first.
 *
 * Common practice, no source.
 * @throws RangeError for days to the sale outside 0..365, or life, weight or price below 0
 */
export function sellFirst(lots: readonly StoredLot[], daysToSale: number): LotInTurn[] {
  expectRange('days to the next sale', daysToSale, 0, 365, 'd');
  const ranked = lots.map((lot) => {
    const { daysLeft, kilograms, pricePerKilogram } = lot;
    if (daysLeft !== null) expectRange('life left', daysLeft, 0, 3650, 'd');
    if (kilograms !== null) expectRange('weight', kilograms, 0, 1_000_000, 'kg');
    if (pricePerKilogram !== null) expectRange('price', pricePerKilogram, 0, 1_000_000, 'per kg');
    const slack = daysLeft === null ? null : daysLeft - daysToSale;
    const money =
      kilograms === null || pricePerKilogram === null ? null : kilograms * pricePerKilogram;
    return { lot, slack, money, turn: slack === null ? 1 : slack < 0 ? 0 : 2 };
  });
  ranked.sort(
    (a, b) =>
      a.turn - b.turn ||
      (a.turn === 1
        ? a.lot.storedAt - b.lot.storedAt
        : (a.slack ?? 0) - (b.slack ?? 0) || (b.money ?? 0) - (a.money ?? 0)) ||
      a.lot.storedAt - b.lot.storedAt,
  );
  const reasons = ['over-before-sale', 'no-history', 'least-slack'] as const;
  return ranked.map(({ lot, slack, money, turn }) => ({
    id: lot.id,
    slack,
    money,
    because: reasons[turn] ?? 'no-history',
  }));
}
