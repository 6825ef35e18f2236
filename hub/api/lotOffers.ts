import type { LotOffers } from '../contract/index.ts';
import { cropName } from '../lots/index.ts';
import { warningOf } from './lotFacts.ts';
import type { ApiParts } from './parts.ts';

const MINUTE = 60_000;
const SEASON = 120 * 86_400_000; // ms; ours: what was used most lately comes first
const WEIGHTS = 3;

/** What the quick entry offers for one room: crops by how often they were put away, then the rest. */
export function lotOffers(parts: ApiParts, room: string): LotOffers {
  const now = parts.clock.now();
  const farm = parts.farm();
  const lots = parts.snapshots.lots
    .all()
    .filter(({ state }) => state !== 'withdrawn')
    .sort((a, b) => b.storedAt - a.storedAt);
  const recent = lots.filter(({ storedAt }) => now - storedAt < SEASON);
  const ids = new Set([...recent.map(({ crop }) => crop), ...farm.file.crops.map(({ id }) => id)]);
  const crops = [...ids].map((crop) => {
    const own = recent.filter((lot) => lot.crop === crop);
    const [last] = own;
    const growing = farm.places.filter((place) => place.crop === crop);
    return {
      crop,
      name: cropName(farm, crop),
      times: own.length,
      weights: [...new Set(own.map(({ kg }) => kg))].slice(0, WEIGHTS),
      from: last?.from ?? (growing.length === 1 ? (growing[0]?.id ?? null) : null),
      waitMinutes:
        last === undefined || last.harvestedAt === null
          ? null
          : Math.round((last.storedAt - last.harvestedAt) / MINUTE),
      cooled: (last?.cooled ?? null) as LotOffers['crops'][number]['cooled'],
      warning: warningOf(parts, crop, room, now),
    };
  });
  const [newest] = lots;
  return {
    crops: crops.sort((a, b) => b.times - a.times),
    last: newest ? { crop: newest.crop, name: cropName(farm, newest.crop), kg: newest.kg } : null,
  };
}
