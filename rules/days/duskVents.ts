import { CLEAR_GAIN } from '../air/index.ts';
import type { Celsius, GramsPerCubicMetre } from '../units.ts';

// The steps are ours, after Savage 1980 (Agrochemophysica 12:5: a closed film house keeps 1-1.5 K)
// and Abreu, Monteiro & Meneses 1994 (Acta Hort. 366:195: open nights cut grey mould).
const CLEAR_OF_FLOOR = 1; // K
const FILM_KEEPS = 1.5; // K
/** How long a purge takes, min, and how long before sunset to have closed. */
export const PURGE_MINUTES = [15, 20] as const;
export const CLOSED_BEFORE_SUNSET = 60; // min

/**
 * Lowest temperature by crop, °C: common practice, no source, but for basil, whose leaves chill
 * below 12 °C (Lang & Cameron 1994).
 */
export const cropFloors = Object.freeze({
  basil: 12,
  eggplant: 10,
  cucurbits: 10,
  strawberry: 0,
  lettuce: 0,
  'brassica-greens': 0,
  'pea-shoots': 0,
});

/** Below it eggplant's pollen is poor and fruit does not set (Mediterranean greenhouse study). */
export const EGGPLANT_FRUIT_SET = 15; // °C, nights

export type DuskPlan = {
  /** `cover-too`: closed film alone will not do; inner covers, or move the trays. */
  readonly does: 'stay-open' | 'close' | 'cover-too' | 'ask-grower';
  /** Purge damp air first; null when nobody knows whether that would dry. */
  readonly purge: boolean | null;
};

/**
 * Close before dusk or stay open: closing buys 1-1.5 K and costs a wet night. Without a forecast
 * or outside probe the grower is asked, nothing is guessed. When cold and wet pull apart, cold wins.
 * @param outsideLow expected lowest outside tonight
 * @param floor of the most tender crop inside
 * @param gain what opening takes out now, see ventGain
 */
export function duskVents(
  outsideLow: Celsius | null,
  floor: Celsius,
  gain: GramsPerCubicMetre | null,
): DuskPlan {
  if (outsideLow === null || Number.isNaN(outsideLow)) return { does: 'ask-grower', purge: null };
  if (outsideLow >= floor + CLEAR_OF_FLOOR) return { does: 'stay-open', purge: false };
  const purge = gain === null ? null : gain >= CLEAR_GAIN;
  return { does: outsideLow >= floor - FILM_KEEPS ? 'close' : 'cover-too', purge };
}

const SUN_HAS_WARMED = 0.5; // K above the night's low; ours

/**
 * Whether to open in the morning: as soon as the sun warms the house and opening dries, before cold
 * leaves meet warm damp air. null when either is not known.
 * @param warmed K above the night's low; null when not known
 */
export function morningOpening(
  warmed: number | null,
  gain: GramsPerCubicMetre | null,
): boolean | null {
  if (warmed !== null && warmed < SUN_HAS_WARMED) return false;
  if (gain !== null && gain < CLEAR_GAIN) return false;
  return warmed === null || gain === null ? null : true;
}
