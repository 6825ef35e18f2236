import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';

// Both from memory.
const PAR_SHARE = 0.45; // of global radiation is photosynthetically active
const PHOTONS = 4.57; // mol of photons in 1 MJ of sunlight's photosynthetically active part

/**
 * Daily light integral, mol m⁻² d⁻¹, from the day's global radiation outside (MJ m⁻² d⁻¹). Under
 * a cover multiply by the share of light it lets through.
 * @throws RangeError outside 0..45 MJ m⁻² d⁻¹
 */
export const dailyLightIntegral = orUnknown(function dailyLightIntegral(radiation: number): number {
  expectRange('global radiation', radiation, 0, 45, 'MJ m⁻² d⁻¹');
  return radiation * PAR_SHARE * PHOTONS;
});
