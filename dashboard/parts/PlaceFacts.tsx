import type { PlaceNow } from '../../hub/contract/index.ts';
import { words } from '../words.ts';
import { Freshness } from './Freshness.tsx';
import { standing, Wetness } from './PlaceRow.tsx';

/** What is known of a place now, each spot apart. */
export function PlaceFacts({ place, zone }: { place: PlaceNow; zone: string }) {
  const { places } = words;
  const told = standing(place).filter((text) => text !== '');
  return (
    <section>
      <h2 class="unseen">{places.now}</h2>
      {place.stale && <p class="sentence">{place.words}</p>}
      <p class="place-figures">
        {place.kind !== 'cool-room' && <Wetness place={place} zone={zone} />}
        {told.length > 0 && <span>{told.join(', ')}</span>}
      </p>
      <ul class="spots">
        {place.spots.map((at) => (
          <li key={at.probe}>
            <h3>{words.spots[at.spot]}</h3>
            <p class="quiet">
              {places.probe} {at.probe}, <Freshness readAt={at.readAt} stale={at.stale} />
            </p>
            <dl class="facts">
              <Fact label={places.temperature} value={words.temperature(at.temperature)} />
              <Fact label={places.humidity} value={words.humidity(at.humidity)} />
              <Fact label={places.dewPoint} value={words.temperature(at.dewPoint)} />
              <Fact label={places.water} value={words.withUnit(at.absoluteHumidity, 'g/m³')} />
            </dl>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Fact({ label, value }: { label: string; value: string }) {
  return (
    <div>
      <dt>{label}</dt>
      <dd>{value}</dd>
    </div>
  );
}
