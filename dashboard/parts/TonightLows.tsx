import type { NightForecast, PlaceNow, Strips } from '../../hub/contract/index.ts';
import { timeOfDay } from '../times.ts';
import { words } from '../words.ts';
import { fanAtLow } from './fanAtLow.ts';

/** Tonight's low at each place in one line, with how far it can be trusted. */
export function TonightLows({
  frost,
  places,
  strips,
  zone,
}: {
  frost: readonly NightForecast[];
  places: readonly PlaceNow[];
  strips: Strips | null;
  zone: string;
}) {
  const name = (id: string) => places.find((place) => place.id === id)?.name ?? id;
  return (
    <section>
      <h2>{words.today.tonight}</h2>
      {frost.length === 0 && <p class="quiet">{words.today.noTonight}</p>}
      <ul class="plain-list lows">
        {frost.map((night) => (
          <li key={`${night.place} ${night.spot}`}>
            <span>
              <strong>{name(night.place)}</strong>, {words.spots[night.spot]}:{' '}
              {words.tonightLow({
                mean: night.low.mean,
                between: fanAtLow(strips, night),
                at: night.pBelow.at,
                p: night.pBelow.p,
                by: night.crossesAt === null ? null : timeOfDay(Date.parse(night.crossesAt), zone),
                nights: night.nightsLearned,
              })}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
