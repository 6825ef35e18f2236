import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { celsius } from '../units.ts';
import { type Air, airHolding, type MixedAir } from './airHolding.ts';
import { vapourPressure } from './vapourPressure.ts';

/**
 * What two bodies of air become when `share` (0..1) of the mixture is `b`, as when a vent or a
 * door opens; see shareExchanged for the share after n air changes. Null for a null.
 *
 * Temperature and vapour pressure are mixed straight, within 0.05 K and 0.1 % of full enthalpy
 * mixing. Two damp bodies of air can mix to more than saturation: then `fog` is true and
 * `humidity` stays above 100, because everything there gets wet at once.
 * @throws RangeError outside -30..60 °C, above 0..105 % or a share of 0..1
 */
export const mix = orUnknown(function mix(a: Air, b: Air, share: number): MixedAir {
  expectRange('share', share, 0, 1, '');
  const temperature = celsius((1 - share) * a.temperature + share * b.temperature);
  const vapour =
    (1 - share) * vapourPressure(a.temperature, a.humidity) +
    share * vapourPressure(b.temperature, b.humidity);
  return airHolding(vapour, temperature);
});
