import { useState } from 'preact/hooks';
import type { FrostOutlook } from '../../hub/contract/index.ts';
import { OddsCurve } from '../charts/OddsCurve.tsx';
import { shortDay } from '../times.ts';
import { words } from '../words.ts';
import { AheadTable, PastYears } from './AheadTable.tsx';
import { Fault } from './Fault.tsx';
import { oddsSentence } from './oddsSentence.ts';
import { Stations } from './Stations.tsx';
import { useAnswer } from './useAnswer.ts';

/** The season's odds of frost at each place in the open: in words, as a picture, as a table. */
export function SeasonOdds({ place: only }: { place?: string } = {}) {
  const text = words.season;
  const path = only
    ? `/api/frost/outlook?${new URLSearchParams({ place: only })}`
    : '/api/frost/outlook';
  const { answer, fault, again } = useAnswer<readonly FrostOutlook[]>(path);
  const [chosen, choose] = useState('');
  const place = answer?.find((one) => one.place === chosen) ?? answer?.[0];
  return (
    <section class="season-odds">
      <h2>{text.title}</h2>
      {answer === null ? (
        <Fault sentence={fault} again={again} />
      ) : place === undefined ? (
        <p>{text.none}</p>
      ) : (
        <>
          {answer.length > 1 && (
            <label class="chooser">
              {text.place}
              <select value={place.place} onChange={(event) => choose(event.currentTarget.value)}>
                {answer.map((one) => (
                  <option key={one.place} value={one.place}>
                    {text.at(one.name, one.spot && words.spots[one.spot])}
                  </option>
                ))}
              </select>
            </label>
          )}
          {place.limits.map((limit) => (
            <Limit key={limit.what} place={place} limit={limit} />
          ))}
          <Stations onChange={again} />
        </>
      )}
    </section>
  );
}

function Limit({ place, limit }: { place: FrostOutlook; limit: FrostOutlook['limits'][number] }) {
  const text = words.season;
  const kind = limit.current;
  const side = limit[kind];
  const at = words.temperature(limit.at);
  const title = <h3>{text.limits[limit.what](at)}</h3>;
  if (side.way === 'unknown')
    return (
      <div class="odds-limit">
        {title}
        <p>{text.cannot(side.missing)}</p>
        <p class="quiet">
          {side.seasons > 0 ? text.years(side.seasons) : text.nights(place.nights)}
        </p>
        {side.missing.includes('station-record') && (
          <p class="quiet">
            {text.howTo} <code>{text.command}</code>
          </p>
        )}
      </div>
    );
  const sentence = oddsSentence(limit);
  const { fitted, station } = place;
  const name = station === null ? '' : text.away(station.name, station.distance);
  const how =
    fitted.way === 'own'
      ? text.fitted.own(fitted.shared)
      : fitted.way === 'none'
        ? text.fitted.none(name)
        : text.fitted[fitted.way](name, fitted.shared, fitted.by);
  return (
    <div class="odds-limit">
      {title}
      <p>{sentence}</p>
      <OddsCurve side={side} kind={kind} today={place.day} label={sentence} />
      <AheadTable side={side} kind={kind} />
      {side.dates && (
        <p class="quiet">
          {text.dates(
            kind,
            shortDay(side.dates.early),
            shortDay(side.dates.middle),
            shortDay(side.dates.late),
          )}
        </p>
      )}
      <p class="quiet">{text.risk(kind, side.today.p, side.today.in5, side.today.in10)}</p>
      <p class="quiet">
        {how} {text.from(side.seasons, side.withFrost, side.way)}{' '}
        {text.unknownNights(limit.soFar.unknownNights)} {text.overrides}
      </p>
      <PastYears side={side} />
    </div>
  );
}
