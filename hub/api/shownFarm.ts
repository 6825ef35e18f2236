import type { ApiParts } from './parts.ts';
import { iso } from './present.ts';

/** What every page needs to know of the farm, with the hub's clock. */
export function shownFarm(parts: ApiParts) {
  const { file, settled } = parts.farm();
  const { name, zone, money, lat, lon, language = 'en', units = {} } = file.farm;
  return {
    name,
    zone,
    money,
    lat,
    lon,
    settled,
    language,
    units,
    invented: /\(invented\)/i.test(name),
    now: iso(parts.clock.now()),
    speed: parts.clock.speed,
  };
}
