import { useState } from 'preact/hooks';
import type { Probe } from '../../hub/contract/index.ts';
import { placeProbe } from '../commands.ts';
import { PlaceForm, type PlaceNamed } from '../parts/PlaceForm.tsx';
import { useSending } from '../parts/useSending.ts';
import { words } from '../words.ts';

/** A probe that speaks and hangs nowhere: what it says, and the question where it is. */
export function SpeakingProbe({
  probe,
  places,
  onPlaced,
}: {
  probe: Probe;
  places: readonly PlaceNamed[];
  onPlaced: (sentence: string) => void;
}) {
  const text = words.setUpSteps;
  const [elsewhere, setElsewhere] = useState(false);
  const { sending, failed, send } = useSending();
  const { id, suggestion, latest } = probe;
  const name = places.find((one) => one.id === suggestion?.place)?.name;
  const told = latest.filter(({ quantity }) => quantity !== 'battery');
  const first = ({ quantity }: (typeof told)[number]) => quantity === 'temperature';
  const values = [...told.filter(first), ...told.filter((one) => !first(one))].map(words.reading);
  return (
    <article class="probe">
      <h3>{text.speaks(id, values)}</h3>
      {suggestion !== null && name !== undefined && !elsewhere ? (
        <>
          <p class="suggestion">
            {words.probes.suggestion}{' '}
            <strong>
              {name}, {words.spots[suggestion.spot]}
            </strong>
            . {suggestion.words}
          </p>
          <div class="row-buttons">
            <button
              type="button"
              class="main"
              aria-disabled={sending}
              onClick={() =>
                send(async () => {
                  const { place, spot } = suggestion;
                  await placeProbe(id, { place, spot });
                  onPlaced(words.probes.placedSaid(id, name, words.spots[spot]));
                })
              }
            >
              {text.itIs}
            </button>
            <button type="button" onClick={() => setElsewhere(true)}>
              {text.elsewhere}
            </button>
          </div>
          <p role="status" class="failed-line">
            {failed}
          </p>
        </>
      ) : (
        <PlaceForm
          probe={elsewhere ? { ...probe, suggestion: null } : probe}
          places={places}
          onPlaced={onPlaced}
          onLeave={null}
        />
      )}
    </article>
  );
}
