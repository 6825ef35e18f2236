import type { Verdict } from '../disease/index.ts';
import { probabilityBelow } from '../frost/index.ts';
import type { Look } from './look.ts';
import type { Crop, CropPlaces } from './snapshot.ts';

const CHANCE = 0.1; // that tonight is too cold there; ours

/**
 * Whether a place is fit for a crop's trays: on none of the compared days did it cross the crop's
 * floor or limit further than the place where they stand, and the chance that tonight is too cold
 * there is 10 % at the most. Where there is no forecast for tonight, the days alone speak. A place
 * that gets too hot is still better than one that gets hotter.
 *
 * Source: floor and limit are told in the farm file; the 10 % are ours, from no source.
 */
export function safeForTrays(
  { forecasts }: Pick<Look, 'forecasts'>,
  from: string,
  to: string,
  { places }: Pick<CropPlaces, 'places'>,
  { chill, heatLimit }: Pick<Crop, 'chill' | 'heatLimit'>,
): Verdict {
  const daysOf = (id: string) => places.find(({ place }) => place === id)?.days ?? [];
  const here = new Map(daysOf(from).map((day) => [day.day, day]));
  const there = daysOf(to).filter(({ lowest }) => lowest !== null);
  if (there.length === 0) return 'unknown';
  for (const { day, lowest, highest } of there) {
    const mine = here.get(day);
    const coldest = Math.min(
      chill ?? Number.NEGATIVE_INFINITY,
      mine?.lowest ?? Number.POSITIVE_INFINITY,
    );
    const hottest = Math.max(
      heatLimit ?? Number.POSITIVE_INFINITY,
      mine?.highest ?? Number.NEGATIVE_INFINITY,
    );
    if ((lowest ?? 0) < coldest || (highest ?? 0) > hottest) return 'no';
  }
  if (chill === null) return 'yes';
  const cold = forecasts.some(
    (night) =>
      night.place === to &&
      // Our own wide guess would forbid every place on a farm's first nights.
      night.method !== 'wide-default' &&
      probabilityBelow(night.low, chill) > CHANCE,
  );
  return cold ? 'no' : 'yes';
}
