import { HOUR } from '../../rules/units.ts';
import type { PieceParts } from './pieceHeat.ts';

/** µmol m⁻² s⁻¹ of photons a plant can use, in each lux of daylight: 54 lx for one. Source: Thimijan &
 *  Heins 1983, HortScience 18:818 (from memory). Under film the colour of the light changes little. */
const PHOTONS_PER_LUX = 1 / 54;

/** Light that came in, mol m⁻², and the hours known. */
export type LightHours = { readonly moles: number; readonly hours: number };

/** Light at a place from hourly roll-ups; the first spot there with a light probe speaks. */
export function lightOf(
  { store, spots }: PieceParts,
  place: string,
  from: number,
  to: number,
): LightHours {
  let best: LightHours = { moles: 0, hours: 0 };
  for (const { probe, from: since, to: until } of spots.overlapping(place, null, from, to)) {
    const id = store.readings.idOf(probe, 'light');
    if (id === undefined) continue;
    const begins = Math.max(from, since);
    const ends = Math.min(to, until ?? to);
    let [moles, hours] = [0, 0];
    for (const { t, sum, n } of store.rollups.hours(id, Math.floor(begins / HOUR) * HOUR, ends)) {
      const share = (Math.min(ends, t + HOUR) - Math.max(begins, t)) / HOUR;
      if (share <= 0) continue;
      hours += share;
      moles += (sum / n) * PHOTONS_PER_LUX * 1e-6 * 3600 * share;
    }
    if (hours > best.hours) best = { moles, hours };
  }
  return best;
}
