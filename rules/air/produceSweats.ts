import { orUnknown } from '../orUnknown.ts';
import { type Celsius, type Kelvin, kelvin } from '../units.ts';
import type { Air } from './airHolding.ts';
import { dewPoint } from './dewPoint.ts';
import { expectAirTemperature } from './expectAirTemperature.ts';

/**
 * Whether produce brought into this air gets wet: it does while it is colder than the air's dew
 * point. Then keep it covered until it is warm, or sell it cold. Null for a null.
 * @param produce temperature of its surface; straight from the cool room, that of the room
 * @returns `colderBy`, how far the produce is below the dew point (below 0: it stays dry)
 * @throws RangeError outside -30..60 °C or above 0..105 %
 */
export const produceSweats = orUnknown(function produceSweats(
  produce: Celsius,
  air: Air,
): { readonly sweats: boolean; readonly dewPoint: Celsius; readonly colderBy: Kelvin } {
  expectAirTemperature(produce);
  const dew = dewPoint(air.temperature, air.humidity);
  return { sweats: produce < dew, dewPoint: dew, colderBy: kelvin(dew - produce) };
});
