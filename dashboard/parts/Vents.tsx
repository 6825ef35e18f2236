import type { PlaceNow } from '../../hub/contract/index.ts';
import { tellVents, undoVents } from '../commands.ts';
import { when } from '../times.ts';
import { words } from '../words.ts';
import { useSending } from './useSending.ts';

/** How the vents stand, and one tap for each way of changing them without having been asked. */
export function Vents({ place, zone, now }: { place: PlaceNow; zone: string; now: number }) {
  const { sending, failed, send } = useSending();
  const { vents } = place;
  if (vents === undefined) return null;
  const text = words.places.vents;
  const tell = (state: 'open' | 'shut') => void send(() => tellVents(place.id, state));
  return (
    <section>
      <h2>{text.heading}</h2>
      <p role="status">
        {ventsSentence(vents, zone, now)} {vents.staysOpen && text.staysOpen}
      </p>
      <p class="answers">
        {vents.state !== 'open' && (
          <button type="button" aria-disabled={sending} onClick={() => tell('open')}>
            {text.openedNow}
          </button>
        )}
        {vents.state !== 'shut' && (
          <button type="button" aria-disabled={sending} onClick={() => tell('shut')}>
            {text.closedNow}
          </button>
        )}
        {vents.mayUndo && (
          <button
            type="button"
            class="plain"
            aria-disabled={sending}
            onClick={() => void send(() => undoVents(place.id))}
          >
            {text.undo}
          </button>
        )}
      </p>
      {failed !== '' && <p role="alert">{failed}</p>}
    </section>
  );
}

function ventsSentence(
  { state, by, since }: NonNullable<PlaceNow['vents']>,
  zone: string,
  now: number,
): string {
  const text = words.places.vents;
  if (state === null) return text.unknown;
  const open = state === 'open';
  return by === 'usual' || since === null
    ? text.usual(open)
    : text.said(open, words.places.since(when(Date.parse(since), zone, now)));
}
