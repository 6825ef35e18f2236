import type { Day, FarmCrop } from '../contract/index.ts';

// Unheated houses are warmer and colder than a crop's comfort band for parts of every day; the mean
// may leave it by so much before the crop is sown elsewhere. Ours, from no source.
const BESIDE_BAND = 5; // °C
/** Hot noons are vented and shaded; beyond so much over the limit no more. Ours. */
const ABOVE_LIMIT = 3; // °C
const FEWEST_DAYS = 5; // of a place's own, for its usual swing of a day; ours

/** How far a place swings round its daily mean, °C. */
export type Swing = { readonly above: number; readonly below: number };

/** From a place's own newest days; null where too few are known. */
export function swingOf(days: readonly Day[]): Swing | null {
  const known = days.filter(({ min, max, mean }) => min !== null && max !== null && mean !== null);
  if (known.length < FEWEST_DAYS) return null;
  const mean = (of: (day: Day) => number) =>
    known.reduce((sum, day) => sum + of(day), 0) / known.length;
  return {
    above: mean((day) => (day.max ?? 0) - (day.mean ?? 0)),
    below: mean((day) => (day.mean ?? 0) - (day.min ?? 0)),
  };
}

/**
 * Why a crop should not stand in a place over the coming days, by the place's climate; null where
 * nothing speaks against it, also where nobody knows.
 *
 * @param mean expected mean temperature of the days to come, °C; null where not known
 */
export function speaksAgainst(
  crop: Pick<FarmCrop, 'band' | 'heatLimit' | 'chill'>,
  mean: number | null,
  swing: Swing | null,
): 'too-cold' | 'too-warm' | null {
  if (mean === null) return null;
  const { band, heatLimit, chill } = crop;
  if (band && mean < band[0] - BESIDE_BAND) return 'too-cold';
  if (band && mean > band[1] + BESIDE_BAND) return 'too-warm';
  if (swing === null) return null;
  if (chill !== undefined && mean - swing.below < chill) return 'too-cold';
  if (heatLimit !== undefined && mean + swing.above > heatLimit + ABOVE_LIMIT) return 'too-warm';
  return null;
}
