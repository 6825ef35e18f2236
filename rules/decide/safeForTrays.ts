import type { Verdict } from '../disease/index.ts';
import { probabilityBelow } from '../frost/index.ts';
import type { Look } from './look.ts';
import type { Crop, CropPlaces } from './snapshot.ts';

const CHANCE = 0.1; // that tonight is too cold there; ours

/**
 * Whether a place is fit for a crop's trays: it did not cross the crop's floor or limit on any of
 * the compared days, and the chance that tonight does is 10 % at the most. Where there is no
 * forecast for tonight, the days alone speak.
 *
 * Source: floor and limit are told in the farm file; the 10 % are ours, from no source.
 */
export function safeForTrays(
  { forecasts }: Pick<Look, 'forecasts'>,
  place: string,
  { places }: Pick<CropPlaces, 'places'>,
  { chill, heatLimit }: Pick<Crop, 'chill' | 'heatLimit'>,
): Verdict {
  const days = places.find((one) => one.place === place)?.days ?? [];
  const read = days.filter(({ lowest, highest }) => lowest !== null && highest !== null);
  if (read.length === 0) return 'unknown';
  for (const { lowest, highest } of read) {
    if (chill !== null && (lowest ?? 0) < chill) return 'no';
    if (heatLimit !== null && (highest ?? 0) > heatLimit) return 'no';
  }
  if (chill === null) return 'yes';
  const cold = forecasts.some(
    (night) =>
      night.place === place &&
      // Our own wide guess would forbid every place on a farm's first nights.
      night.method !== 'wide-default' &&
      probabilityBelow(night.low, chill) > CHANCE,
  );
  return cold ? 'no' : 'yes';
}
