import type { Crop, PlaceNow } from '../../rules/decide/index.ts';
import { celsius, minutes, percent } from '../../rules/units.ts';
import { damageAt, type Farm, USUAL_BASE, WET } from '../farm/index.ts';

// The farm file's limits as the rules take them.

export const cropsOf = (farm: Farm): Crop[] =>
  farm.file.crops.map((crop) => ({
    id: crop.id,
    base: celsius(crop.base ?? USUAL_BASE),
    band: crop.band ? [celsius(crop.band[0]), celsius(crop.band[1])] : null,
    heatLimit: crop.heatLimit === undefined ? null : celsius(crop.heatLimit),
    chill: crop.chill === undefined ? null : celsius(crop.chill),
    disease: crop.disease,
    price: crop.price ?? null,
    perTray: crop.perTray ?? null,
  }));

export function coverOf(farm: Farm, place: Farm['places'][number]): PlaceNow['cover'] {
  const damage = damageAt(farm, place);
  if (!place.cover || damage === null) return null;
  return {
    minutes: minutes(place.cover.minutes),
    value: place.cover.value,
    damage: celsius(damage.at),
    damageFrom: damage.from ?? undefined,
    effect: place.cover.effect,
  };
}

export function wetOf(place: Farm['places'][number]): PlaceNow['wet'] {
  const { at, below, hours }: NonNullable<typeof place.wet> = place.wet ?? WET;
  return {
    at: percent(at),
    below: percent(below),
    ...(hours === undefined ? {} : { hours }),
  };
}
