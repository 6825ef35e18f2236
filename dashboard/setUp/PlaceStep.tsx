import { words } from '../words.ts';
import type { Description } from './description.ts';
import type { Item } from './fieldSpec.ts';
import { shortName } from './figure.ts';
import { ListPart } from './ListPart.tsx';
import { newPlace, nextKind, placeFields } from './placeFields.ts';
import { useChoices } from './useChoices.ts';

const nameOf = (place: Item) => String(place.name ?? '');

/** The places of the farm: added by kind, changed, taken out. */
export function PlaceStep({ now }: { now: Description }) {
  const text = words.setUpSteps;
  const choices = useChoices();
  const places = now.description?.places ?? [];
  const kind = nextKind(places);
  return (
    <>
      {places.every((one) => one.kind !== 'outdoor') && <p class="quiet">{text.outdoorWhy}</p>}
      <ListPart
        now={now}
        list="places"
        told={words.setUpFields.place}
        title={text.addPlace}
        nameOf={nameOf}
        lineOf={(place) =>
          `${nameOf(place)}, ${words.kinds[place.kind as keyof typeof words.kinds]}`
        }
        specs={(texts) => placeFields(now.description ?? {}, choices, texts)}
        begin={(texts) => newPlace(texts.kind ?? kind)}
        whole={(place) => {
          const name = String(place.name ?? '').trim();
          const taken = places.map(({ id }) => id);
          return name === '' ? null : { id: place.id ?? shortName(name, taken), ...place };
        }}
      />
      <p class="quiet">{text.placesElse}</p>
    </>
  );
}
