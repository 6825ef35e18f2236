import { expectRange } from '../expectRange.ts';
import { type Celsius, celsius, type Percent, percent } from '../units.ts';
import { saturationVapourPressure } from './saturationVapourPressure.ts';
import { vapourPressure } from './vapourPressure.ts';

/** Air as a probe sees it. */
export type Air = { readonly temperature: Celsius; readonly humidity: Percent };

const HAIR = 1e-6; // %: room for the last bits when both are saturated at one temperature

/**
 * What two bodies of air become when `share` (0..1) of the mixture is `b`, as when a vent or a
 * door opens. Perfect mixing after n changes of air is a share of 1 - exp(-n).
 *
 * Temperature and vapour pressure are mixed straight, within 0.05 K and 0.1 % of full enthalpy
 * mixing. Two damp bodies of air can mix to more than saturation: then `fog` is true and
 * `humidity` stays above 100, because everything there gets wet at once.
 * @throws RangeError outside -30..60 °C, above 0..105 % or a share of 0..1
 */
export function mix(a: Air, b: Air, share: number): Air & { readonly fog: boolean } {
  expectRange('share', share, 0, 1, '');
  const temperature = celsius((1 - share) * a.temperature + share * b.temperature);
  const vapour =
    (1 - share) * vapourPressure(a.temperature, a.humidity) +
    share * vapourPressure(b.temperature, b.humidity);
  const humidity = percent((100 * vapour) / saturationVapourPressure(temperature));
  return { temperature, humidity, fog: humidity > 100 + HAIR };
}
