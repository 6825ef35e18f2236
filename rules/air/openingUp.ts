import type { Celsius, GramsPerCubicMetre } from '../units.ts';
import { type Air, airHolding, type MixedAir } from './airHolding.ts';
import { mix } from './mix.ts';
import { type OpeningVerdict, openingVerdict } from './openingVerdict.ts';
import { saturationVapourPressure } from './saturationVapourPressure.ts';
import { shareExchanged } from './shareExchanged.ts';
import { ventGain } from './ventGain.ts';

export type Opening = {
  readonly verdict: OpeningVerdict;
  /** Water lost, both airs at the inside temperature; below 0 it is won. */
  readonly gain: GramsPerCubicMetre;
  /** The house's air after so many air changes. */
  readonly mixed: MixedAir;
  /** That air, warmed (or cooled) to `warmedTo`; null when that was not told. */
  readonly rewarmed: MixedAir | null;
};

/**
 * What opening up would do to a house's humidity. null when either air is not known.
 *
 * Full exchange alone gives the house the humidity of the outside: what pays is exchange together
 * with warming. Wet leaves and soil put water back, so the humidities are lower bounds: look again
 * after 30 and 60 minutes (ours). Perfect mixing, in temperature and in vapour pressure; fog that
 * is warmed turns to vapour again.
 * @param airChanges volumes that have passed through
 * @param warmedTo what sun or soil warms the mixture to
 * @throws RangeError outside -30..60 °C, above 0..105 % or 0..1000 air changes
 */
export function openingUp(
  inside: Air | null,
  outside: Air | null,
  {
    airChanges,
    warmedTo = null,
  }: { readonly airChanges: number; readonly warmedTo?: Celsius | null },
): Opening | null {
  if (inside === null || outside === null) return null;
  const gain = ventGain(inside, outside);
  const mixed = mix(inside, outside, shareExchanged(airChanges));
  const vapour = (saturationVapourPressure(mixed.temperature) * mixed.humidity) / 100;
  const rewarmed = warmedTo === null ? null : airHolding(vapour, warmedTo);
  return { verdict: openingVerdict(gain), gain, mixed, rewarmed };
}
