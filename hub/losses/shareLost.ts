import { lossMoney } from '../../rules/losses/index.ts';
import type { Farm } from '../farm/index.ts';
import type { LossFacts } from './loss.ts';

type Amount = Pick<LossFacts, 'amount' | 'unit' | 'of' | 'crop'>;

/** Share lost of what stood there, 0..1; null where the whole is not known. */
export function shareLost(farm: Farm, { amount, unit, of, crop }: Amount): number | null {
  if (unit === 'share') return Math.min(1, amount / 100);
  if (of === null) return null;
  if (of.unit === unit) return Math.min(1, amount / of.amount);
  const perTray = farm.crop(crop)?.perTray;
  if (!perTray) return null;
  const [lost, whole] =
    unit === 'trays' ? [amount * perTray, of.amount] : [amount, of.amount * perTray];
  return Math.min(1, lost / whole);
}

/** Weight lost, kg: as told, or by what a tray yields; null where neither says. */
export function weightLost(farm: Farm, loss: Amount): number | null {
  const { amount, unit, of, crop } = loss;
  if (unit === 'kg') return amount;
  const perTray = farm.crop(crop)?.perTray ?? null;
  const trays =
    unit === 'trays' ? amount : of?.unit === 'trays' ? (amount / 100) * of.amount : null;
  if (trays !== null) return perTray === null ? null : trays * perTray;
  return of === null ? null : (amount / 100) * of.amount;
}

/** What it would have fetched, at the crop's price. */
export const moneyLost = (farm: Farm, loss: Amount): number | null =>
  lossMoney(weightLost(farm, loss), farm.crop(loss.crop)?.price ?? null);
