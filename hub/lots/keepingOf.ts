import { type LotKeeping, storageOf } from '../../rules/cooler/index.ts';
import type { LotClass } from '../contract/index.ts';
import type { Farm } from '../farm/index.ts';

export type CropKeeping = LotKeeping & {
  readonly class: LotClass | null;
  /** Where the days come from; null where nobody tells how long it keeps. */
  readonly source: string | null;
};

/** Crops of the storage table that are sold cut. Ours: shoots and mixes are cut leaves. */
const CUT = new Set(['salad-mix', 'pea-shoots', 'radish-microgreens', 'buckwheat-microgreens']);
const TOLD = 'told in the farm file';

/** How a crop keeps: as the farm file tells, and what it leaves out as the storage table has it. */
export function keepingOf(farm: Farm, cropId: string): CropKeeping {
  const crop = farm.crop(cropId);
  const told = crop?.keeps;
  const row = storageOf(told?.like ?? cropId);
  const days = told?.days;
  const own =
    days === undefined
      ? null
      : typeof days === 'number'
        ? { from: days, to: days }
        : { from: days[0], to: days[1] };
  return {
    life: own ?? row?.life ?? null,
    reference: own ? (told?.at ?? 0) : (row?.lifeAt ?? 0),
    q10: told?.q10 ?? null,
    freezesAt: told?.freezes ?? row?.freezesAt ?? null,
    // What hurts the growing crop stands in for what hurts the harvested one, until a table tells.
    chillMin: told?.chill ?? (row ? row.chillMin : (crop?.chill ?? null)),
    class: told?.class ?? (row && CUT.has(row.crop) ? 'cut' : null),
    source: own ? TOLD : row?.life ? row.source : null,
  };
}

/** A crop as people call it. */
export const cropName = (farm: Farm, cropId: string) =>
  farm.crop(cropId)?.name ?? cropId.replaceAll('-', ' ');
