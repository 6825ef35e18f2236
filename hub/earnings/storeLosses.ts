import { pooledLoss } from '../../rules/losses/index.ts';
import type { Lot } from '../lots/index.ts';

/**
 * Share of a crop that went into the store and was thrown out of it, season by season. Lots tell no
 * batch, so all that was cut of the crop in that season bears the same share; what was sorted out
 * before it went in is in no lot, so nothing is counted twice. A lot counts by what has left it so
 * far: what still lies there may be sold. Carried to another room of the farm, it is still the lot.
 */
export function storeLosses(
  lots: readonly Lot[],
  seasonKey: (t: number) => string,
): { of(crop: string, at: number): number | null } {
  const byKey = new Map<string, Lot[]>();
  for (const lot of lots) {
    if (lot.state === 'withdrawn' || lot.taken.length === 0) continue;
    const key = `${lot.crop}\n${seasonKey(lot.storedAt)}`;
    byKey.set(key, [...(byKey.get(key) ?? []), lot]);
  }
  return {
    /** null where no lot of it was kept in that season. */
    of(crop, at) {
      const here = byKey.get(`${crop}\n${seasonKey(at)}`) ?? [];
      const { perThousand } = pooledLoss(
        here.map(({ taken }) => ({
          harvested: weight(taken),
          lost: weight(taken.filter(({ how }) => how === 'thrown-out')),
        })),
      );
      return perThousand === null ? null : perThousand / 1000;
    },
  };
}

const weight = (taken: Lot['taken']) => taken.reduce((sum, { kg }) => sum + kg, 0);
