import type { PickOffers } from '../contract/index.ts';
import { cropName } from '../lots/index.ts';
import type { ApiParts } from './parts.ts';
import { pickPlaces } from './pickFacts.ts';

const SEASON = 120 * 86_400_000; // ms; ours: what was picked most lately comes first
const OFFERED = 3; // weights, and lengths of time

/** What the quick entry offers: where somebody picked lately, then patches where nobody has yet. */
export function pickOffers(parts: ApiParts): PickOffers {
  const now = parts.clock.now();
  const farm = parts.farm();
  const places = pickPlaces(parts);
  const here = new Set(places.map(({ id }) => id));
  const picks = parts.picks
    .all()
    .filter(({ state, place }) => state === 'kept' && here.has(place))
    .sort((a, b) => b.at - a.at);
  const keys = new Set(picks.filter(({ at }) => now - at < SEASON).map(keyOf));
  for (const { id, kind, crop } of places)
    if (kind === 'patch' && crop !== undefined) keys.add(`${id}\n${crop}`);
  const spots = [...keys].map((key) => {
    const [place = '', crop = ''] = key.split('\n');
    const own = picks.filter((pick) => keyOf(pick) === key);
    const lately = own.filter(({ at }) => now - at < SEASON);
    const some = (values: readonly (number | null)[]) =>
      [...new Set(values.filter((value) => value !== null))].slice(0, OFFERED);
    return {
      ...{ place, crop, times: lately.length },
      placeName: farm.place(place)?.name ?? place,
      name: cropName(farm, crop),
      weights: some(own.map(({ kg }) => kg)),
      minutes: some(own.map(({ minutes }) => minutes)),
      walkMinutes: own[0]?.walkMinutes ?? null,
      pickers: own[0]?.pickers ?? 1,
    };
  });
  return {
    spots: spots.sort((a, b) => b.times - a.times),
    places: places.map(({ id, name }) => ({ id, name })),
    crops: farm.file.crops.map(({ id }) => ({ id, name: cropName(farm, id) })),
  };
}

const keyOf = ({ place, crop }: { place: string; crop: string }) => `${place}\n${crop}`;
