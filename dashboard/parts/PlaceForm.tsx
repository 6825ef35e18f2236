import { useState } from 'preact/hooks';
import type { PlaceKind, PlaceNow, Probe, Spot } from '../../hub/contract/index.ts';
import { placeProbe } from '../commands.ts';
import { words } from '../words.ts';

/** Where a probe mostly hangs first in a place of a kind; anything else is chosen. */
const USUAL: Readonly<Record<PlaceKind, Spot>> = {
  ...{ tunnel: 'canopy', patch: 'canopy', outdoor: 'air', 'cool-room': 'air' },
};
export type PlaceNamed = Pick<PlaceNow, 'id' | 'name' | 'kind'>;

/** Place and spot for a probe, from now on. */
export function PlaceForm({
  probe,
  places,
  onPlaced,
  onLeave,
}: {
  probe: Probe;
  places: readonly PlaceNamed[];
  onPlaced: (sentence: string) => void;
  onLeave: (() => void) | null;
}) {
  const text = words.probes;
  const [place, setPlace] = useState(probe.suggestion?.place ?? probe.place ?? '');
  const [spot, setSpot] = useState<Spot | ''>(probe.suggestion?.spot ?? probe.spot ?? '');
  const [sending, setSending] = useState(false);
  const [failed, setFailed] = useState('');
  const choose = (id: string) => {
    setPlace(id);
    const kind = places.find((one) => one.id === id)?.kind;
    if (spot === '' && kind !== undefined) setSpot(USUAL[kind]);
  };
  const send = async (event: SubmitEvent) => {
    event.preventDefault();
    if (sending || place === '' || spot === '') return;
    setSending(true);
    setFailed('');
    try {
      await placeProbe(probe.id, { place, spot });
      const name = places.find(({ id }) => id === place)?.name ?? place;
      onPlaced(text.placedSaid(probe.id, name, words.spots[spot]));
    } catch (error) {
      setFailed(text.notPlaced(error instanceof Error ? error.message : String(error)));
    } finally {
      setSending(false);
    }
  };
  return (
    <form class="place-form" onSubmit={send}>
      {onLeave && <p class="quiet">{text.moveFrom}</p>}
      <label>
        {text.place}
        <select required value={place} onChange={(event) => choose(event.currentTarget.value)}>
          <option value="">{text.choose}</option>
          {places.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label>
        {text.spot}
        <select
          required
          value={spot}
          onChange={(event) => setSpot(event.currentTarget.value as Spot | '')}
        >
          <option value="">{text.choose}</option>
          {Object.entries(words.spots).map(([id, name]) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <div class="form-buttons">
        <button type="submit" class="main" aria-disabled={sending}>
          {sending ? text.putting : text.put}
        </button>
        {onLeave && (
          <button type="button" onClick={onLeave}>
            {text.cancel}
          </button>
        )}
      </div>
      <p role="status" class="failed-line">
        {failed}
      </p>
    </form>
  );
}
