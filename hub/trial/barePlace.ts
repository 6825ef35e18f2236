import type { PlaceNow } from '../../rules/decide/index.ts';
import { celsius } from '../../rules/units.ts';
import type { Farm } from '../farm/index.ts';
import { coverOf, wetOf } from '../snapshot/index.ts';

/** A place as the rules take it, without anything said or measured. */
export function barePlace(farm: Farm, place: Farm['places'][number]): PlaceNow {
  return {
    id: place.id,
    kind: place.kind,
    crop: place.crop ?? null,
    trays: place.trays ?? null,
    vents: place.vents,
    opened: null,
    covered: null,
    wet: wetOf(place),
    cover: coverOf(farm, place),
    coolRoom:
      place.setPoint === undefined || place.limit === undefined || place.kind !== 'cool-room'
        ? null
        : {
            setPoint: celsius(place.setPoint),
            limit: celsius(place.limit),
            value: place.value ?? null,
          },
    spots: [],
  };
}
