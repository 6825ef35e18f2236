import type { Saving } from '../answer.ts';
import { harmPerHour } from '../days/index.ts';
import type { Look } from './look.ts';
import type { Crop, PlaceNow } from './snapshot.ts';
import { sparedTrays } from './worth.ts';

const MOST = 0.5; // share of the trays' worth that one task may claim to spare; ours

/**
 * What ending some harmful hours spares of the trays of a place: the share of the crop that an hour
 * costs, as its own batches show or as a wide guess, times the hours, of what stands there.
 *
 * Source: harmPerHour; that heat and damp hours weigh alike is ours, and no task claims over half.
 */
export function harmSpared(
  { snapshot }: Look,
  place: PlaceNow,
  crop: Crop | null,
  hours: number,
): { readonly saves: Saving; readonly drop: number } {
  const known = snapshot.trays?.crops.find((one) => one.crop === crop?.id)?.share;
  const drop = Math.min(MOST, Math.max(0, hours) * (known ?? harmPerHour([])).mean);
  return { saves: sparedTrays(place, crop, drop), drop };
}
