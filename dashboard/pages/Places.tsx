import { Fault } from '../parts/Fault.tsx';
import { Heading } from '../parts/Heading.tsx';
import { PlaceRow } from '../parts/PlaceRow.tsx';
import { LazyPlacesCompared } from '../placesCompared/lazyParts.tsx';
import { farm, faults, today } from '../state.ts';
import { words } from '../words.ts';

/** Every place with its newest values. */
export function Places() {
  const zone = farm.value?.zone;
  const places = today.value?.places;
  return (
    <>
      <Heading title={words.places.title} />
      {places === undefined || zone === undefined ? (
        <Fault sentence={faults.value.today} />
      ) : places.length === 0 ? (
        <p>{words.places.none}</p>
      ) : (
        <ul class="places">
          {places.map((place) => (
            <PlaceRow key={place.id} place={place} zone={zone} />
          ))}
        </ul>
      )}
      {places !== undefined && places.length > 0 && <LazyPlacesCompared />}
    </>
  );
}
