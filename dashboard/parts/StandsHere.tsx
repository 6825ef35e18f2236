import type { PlaceNow } from '../../hub/contract/index.ts';
import { words } from '../words.ts';

/** Trays of batches that stand in a place, with the way to them; nothing where nobody keeps any. */
export function StandsHere({ place }: { place: PlaceNow }) {
  const { stands } = place;
  const text = words.batches;
  if (stands === undefined) return null;
  return (
    <section>
      <h2>{text.here}</h2>
      <p>{stands.length === 0 ? text.hereNone : standsWords(stands)}</p>
      <p>
        <a class="back" href={`/batches#at-${encodeURIComponent(place.id)}`}>
          {text.toBatches}
        </a>
      </p>
    </section>
  );
}

/** `12 trays Basil, 4 trays Pea shoots` */
export const standsWords = (stands: NonNullable<PlaceNow['stands']>) =>
  stands.map(({ name, trays }) => words.batches.standing(name, trays)).join(', ');
