import type { BandTally } from './hoursInBand.ts';

// All ours, from no source.
const PER_HOT_HOUR = 1;
const PER_WET_HOUR = 0.5;
const CLEARLY = 2; // h a day better before anybody carries trays

/** In-band hours a day, less one for each hot hour and half for each wet one. */
export const placeScore = ({ inBand, hot, wet }: Pick<BandTally, 'inBand' | 'hot' | 'wet'>) =>
  inBand - PER_HOT_HOUR * hot - PER_WET_HOUR * wet;

export type Trays = {
  /** Never below this, °C; null where the crop has none. */
  readonly floor: number | null;
  /** Never above this, °C; null where the crop has none. */
  readonly limit: number | null;
  /** Mould was seen on them: they are not carried among clean ones. */
  readonly mouldy: boolean;
};

/**
 * Where trays would clearly do better, and by how many hours a day; null where staying is as good,
 * or the better place crosses the crop's floor or limit, or the trays are mouldy.
 */
export function bestPlace(
  here: BandTally,
  others: readonly BandTally[],
  { floor, limit, mouldy }: Trays,
): { readonly place: string; readonly betterBy: number } | null {
  if (mouldy) return null;
  const safe = others.filter(
    ({ place, lowest, highest }) =>
      place !== here.place &&
      (floor === null || lowest >= floor) &&
      (limit === null || highest <= limit),
  );
  const best = safe.reduce<BandTally | null>(
    (top, each) => (top === null || placeScore(each) > placeScore(top) ? each : top),
    null,
  );
  if (best === null) return null;
  const betterBy = placeScore(best) - placeScore(here);
  return betterBy >= CLEARLY ? { place: best.place, betterBy } : null;
}
