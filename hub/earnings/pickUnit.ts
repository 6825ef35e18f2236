import { batchEarnings } from '../../rules/money/index.ts';
import type { FarmCrop, WorthGap, YearSeason } from '../contract/index.ts';
import { handMinutes, type Pick } from '../picks/index.ts';
import { type Figure, figureOf, notNeeded, type Unit, unknown, written } from './unit.ts';

/**
 * What one picking brought and took. It bears no seed and no space: planting and looking after a
 * patch are spent whether somebody picks or not, so it says whether picking is worth its hours.
 */
export function pickUnit(
  pick: Pick,
  context: {
    readonly crop: FarmCrop | undefined;
    readonly season: YearSeason;
    readonly storeShare: number | null;
  },
): Unit | null {
  if (pick.state !== 'kept') return null;
  const { crop, season, storeShare } = context;
  const { kg, lostKg } = pick;
  const price = figureOf(pick.price, crop?.price);
  const minutes = figureOf(handMinutes(pick), undefined);
  const lost = figureOf(lostKg, undefined);
  const storeLost: Figure =
    storeShare === null
      ? notNeeded
      : lostKg === null
        ? unknown
        : { value: storeShare * (kg - lostKg), from: 'lots' };
  const allLost = lostKg === null ? null : Math.min(kg, lostKg + (storeShare ?? 0) * (kg - lostKg));
  const missing: WorthGap[] = [
    ...(lostKg === null ? (['lost'] as const) : []),
    ...(price.value === null ? (['price'] as const) : []),
    ...(minutes.value === null ? (['minutes'] as const) : []),
  ];
  return {
    ...{ id: pick.id, of: 'pickings', root: pick.id, crop: pick.crop, place: pick.place },
    ...{ season, from: pick.at, to: pick.at },
    figures: {
      ...{ trays: notNeeded, days: notNeeded, seed: notNeeded, other: notNeeded },
      ...{ kg: written(kg), lost, storeLost, price, minutes },
    },
    ...{ missing, lost: allLost, minutes: minutes.value },
    earnings: batchEarnings({
      ...{ trays: 0, days: 0, kilograms: kg, lost: allLost, price: price.value },
      ...{ seed: 0, other: 0, minutes: minutes.value ?? 0 },
    }),
  };
}
