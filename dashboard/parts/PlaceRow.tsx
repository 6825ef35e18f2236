import type { PlaceNow } from '../../hub/contract/index.ts';
import { now } from '../clock.ts';
import { when } from '../times.ts';
import { words } from '../words.ts';
import { Freshness } from './Freshness.tsx';
import { Mark } from './Mark.tsx';
import { standsWords } from './StandsHere.tsx';

/** A place in the list: what it is, how it is, and how old that knowledge is. */
export function PlaceRow({ place, zone }: { place: PlaceNow; zone: string }) {
  return (
    <li class={place.stale ? 'place place-stale' : 'place'}>
      <h2>
        <a href={`/places/${encodeURIComponent(place.id)}`}>{place.name}</a>
      </h2>
      <p class="place-figures">
        <span class="figure">{words.temperature(place.temperature)}</span>
        <span class="figure">{words.humidity(place.humidity)}</span>
        {place.kind !== 'cool-room' && <Wetness place={place} zone={zone} />}
      </p>
      {place.stale && <p>{place.words}</p>}
      {place.stands !== undefined && place.stands.length > 0 && (
        <p>
          <a class="stands" href={`/batches#at-${encodeURIComponent(place.id)}`}>
            {standsWords(place.stands)}
          </a>
        </p>
      )}
      <p class="quiet">
        {[words.kinds[place.kind], place.crop, ...standing(place)].filter(Boolean).join(', ')} ·{' '}
        <Freshness readAt={place.readAt} stale={place.stale} />
      </p>
    </li>
  );
}

export function Wetness({ place, zone }: { place: PlaceNow; zone: string }) {
  const since = place.wetSince;
  return (
    <span class="wetness">
      <Mark shape={place.wet === null ? 'unknown' : place.wet ? 'wet' : 'dry'} />{' '}
      {words.wetness(place)}
      {since !== null &&
        ` ${words.places.since(when(Date.parse(since), zone, now.value ?? Date.parse(since)))}`}
    </span>
  );
}

/** What somebody last said was done here, as words. */
export const standing = ({ opened, covered, vents }: PlaceNow) => [
  opened === null
    ? ''
    : vents?.by === 'usual'
      ? words.places.openedUsual(opened)
      : words.places.opened(opened),
  covered === null ? '' : words.places.covered(covered),
];
