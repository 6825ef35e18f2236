import { useState } from 'preact/hooks';
import type { Probe } from '../../hub/contract/index.ts';
import { mayChange, today } from '../state.ts';
import { words } from '../words.ts';
import { PlaceForm, type PlaceNamed } from './PlaceForm.tsx';
import { ProbeFacts } from './ProbeFacts.tsx';

/** A probe and what it says; one without a place offers to be placed, another to be moved. */
export function ProbeCard({
  probe,
  places,
  now,
  onPlaced,
}: {
  probe: Probe;
  places: readonly PlaceNamed[];
  now: number;
  onPlaced: (sentence: string) => void;
}) {
  const [moving, setMoving] = useState(false);
  const placed = (sentence: string) => {
    setMoving(false);
    onPlaced(sentence);
  };
  const here = places.find(({ id }) => id === probe.place)?.name ?? probe.place;
  // What the hub concluded about this probe, rather than a rule of the page's own.
  const task = today.value?.tasks.find(
    ({ kind, subject }) => kind === 'see-to-probe' && subject === probe.id,
  );
  const unclaimed = probe.place === null;
  return (
    <article class="probe">
      <h3>
        {probe.id}
        {here !== null && (
          <span class="probe-where">
            {' '}
            {here}
            {probe.spot !== null && `, ${words.spots[probe.spot]}`}
          </span>
        )}
      </h3>
      {task && (
        <p>
          <a class="see-to" href={`/#${encodeURIComponent(task.id)}`}>
            {task.title}
          </a>
          {`: ${task.why}`}
        </p>
      )}
      <ProbeFacts probe={probe} now={now} />
      {probe.suggestion !== null && unclaimed && (
        <p class="suggestion">
          {words.probes.suggestion}{' '}
          <strong>
            {places.find(({ id }) => id === probe.suggestion?.place)?.name ??
              probe.suggestion.place}
            , {words.spots[probe.suggestion.spot]}
          </strong>
          . {probe.suggestion.words}
        </p>
      )}
      {mayChange.value && (unclaimed || moving) && (
        <PlaceForm
          probe={probe}
          places={places}
          onPlaced={placed}
          onLeave={unclaimed ? null : () => setMoving(false)}
        />
      )}
      {mayChange.value && !unclaimed && !moving && (
        <button
          type="button"
          aria-label={`${words.probes.move}: ${probe.id}`}
          onClick={() => setMoving(true)}
        >
          {words.probes.move}
        </button>
      )}
    </article>
  );
}
