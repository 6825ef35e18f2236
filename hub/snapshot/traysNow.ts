import type { PlaceNow } from '../../rules/decide/index.ts';
import { type Batch, type Standing, standingAt } from '../batches/index.ts';
import type { Farm } from '../farm/index.ts';

/** Trays in a place by the batches that are kept there; by the farm file where nobody keeps any. */
export function traysNow(
  farm: Farm,
  batches: readonly Batch[],
  { id, trays }: Farm['places'][number],
  now: number,
): Pick<PlaceNow, 'trays' | 'standing'> {
  const standing = standingAt(batches, id, now);
  if (standing === null) return { trays: trays ?? null };
  const count = standing.reduce((sum, one) => sum + one.trays, 0);
  return { trays: count, standing: worthOf(farm, standing) };
}

/** Trays at their crops' usual yield and price; null where one of them is not known. */
function worthOf(farm: Farm, standing: readonly Standing[]) {
  let kilograms: number | null = 0;
  let money: number | null = 0;
  for (const { crop, trays } of standing) {
    const { perTray, price } = farm.crop(crop) ?? {};
    kilograms = kilograms === null || perTray === undefined ? null : kilograms + trays * perTray;
    money =
      money === null || perTray === undefined || price === undefined
        ? null
        : money + trays * perTray * price;
  }
  return { kilograms, money };
}
