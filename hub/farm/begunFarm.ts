import type { FarmBegun } from '../contract/index.ts';
import { type Farm, farmOf } from './farm.ts';

/** Stands where nobody has told; nothing is worked out with it. XXX: no currency (ISO 4217). */
const NOBODY_TOLD = { name: '', zone: 'UTC', lat: 0, lon: 0, altitude: 0, money: 'XXX', wage: 0 };

/** What a hub works with before anybody has described a farm. */
export const noFarm = (): Farm =>
  farmOf(
    {
      farm: NOBODY_TOLD,
      places: [],
      probes: [],
      crops: [],
      mixes: [],
      deliveries: [],
      mappings: [],
    },
    false,
  );

/** A farm as far as it is described: `settled` once it has a zone and a position. */
export function begunFarm({ farm, ...rest }: FarmBegun): Farm {
  const { zone, lat, lon } = farm;
  const settled = zone !== undefined && lat !== undefined && lon !== undefined;
  const where = {
    zone: zone ?? NOBODY_TOLD.zone,
    lat: lat ?? NOBODY_TOLD.lat,
    lon: lon ?? NOBODY_TOLD.lon,
  };
  return farmOf({ ...rest, farm: { ...farm, ...where } }, settled);
}
