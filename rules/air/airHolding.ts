import { type Celsius, type Percent, percent } from '../units.ts';
import { saturationVapourPressure } from './saturationVapourPressure.ts';

/** Air as a probe sees it. */
export type Air = { readonly temperature: Celsius; readonly humidity: Percent };

/** Air that has been mixed, warmed or cooled; with fog its humidity is above 100. */
export type MixedAir = Air & { readonly fog: boolean };

const FOG_ABOVE = 100.000001; // %: with room for the last bits of air that is just saturated

/** Air of this temperature that holds this vapour (kPa); more than it can hold is fog. */
export function airHolding(vapour: number, temperature: Celsius): MixedAir {
  const humidity: Percent = percent((100 * vapour) / saturationVapourPressure(temperature));
  return { temperature, humidity, fog: humidity > FOG_ABOVE };
}
