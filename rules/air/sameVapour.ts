import { orUnknown } from '../orUnknown.ts';
import type { Celsius } from '../units.ts';
import { type Air, airHolding, type MixedAir } from './airHolding.ts';
import { vapourPressure } from './vapourPressure.ts';

/**
 * The same vapour at another temperature: RH2 = RH1 es(t1) / es(t2). What becomes of air that the
 * sun or warm soil warms, or that a cold wall cools. Cooled below its dew point it is fog: then
 * `humidity` stays above 100. Null for a null.
 *
 * Source: definition of relative humidity with FAO-56 eq. 11; at one air pressure the pressure of
 * the vapour does not change with temperature.
 * @throws RangeError outside -30..60 °C or above 0..105 %
 */
export const sameVapour = orUnknown(function sameVapour(air: Air, becomes: Celsius): MixedAir {
  return airHolding(vapourPressure(air.temperature, air.humidity), becomes);
});
