import { useState } from 'preact/hooks';
import { Fault } from '../parts/Fault.tsx';
import { words } from '../words.ts';
import { HoursBars } from './HoursBars.tsx';
import { GaveTable, HoursTable } from './HoursTable.tsx';
import { usePlaces } from './usePlaces.ts';
import './placesCompared.css';

const DAYS = [10, 20, 30];

/** Where a crop does best: in a sentence, as bars, as tables, and in words. */
export function PlacesCompared() {
  const text = words.placesCompared;
  const [crop, choose] = useState<string | null>(null);
  const [days, chooseDays] = useState(DAYS[0] ?? 10);
  const { answer, fault, again } = usePlaces(crop, days);
  if (answer === null)
    return (
      <section class="places-compared">
        <h2>{text.titleNone}</h2>
        <Fault sentence={fault} again={again} />
      </section>
    );
  if (answer.places.length === 0)
    return (
      <section class="places-compared">
        <h2>{text.titleNone}</h2>
        <p>{answer.sentence}</p>
      </section>
    );
  const { heatLimit, places, standing } = answer;
  return (
    <section class="places-compared">
      <h2 id="best-place">{text.title(answer.name)}</h2>
      <div class="choosers">
        <label class="chooser">
          {text.crop}
          <select value={answer.crop} onChange={(event) => choose(event.currentTarget.value)}>
            {answer.crops.map((one) => (
              <option key={one.crop} value={one.crop}>
                {one.name}
              </option>
            ))}
          </select>
        </label>
        <label class="chooser">
          {text.days}
          <select
            value={String(days)}
            onChange={(event) => chooseDays(Number(event.currentTarget.value))}
          >
            {DAYS.map((count) => (
              <option key={count} value={String(count)}>
                {text.lastDays(count)}
              </option>
            ))}
          </select>
        </label>
      </div>
      <p class="sentence" role="status">
        {answer.sentence}
      </p>
      <p class="quiet">{text.score}</p>
      {standing.length > 0 && (
        <ul class="trays-there">
          {standing.map((one) => (
            <li key={one.batch ?? one.place}>
              <a href={`/places/${one.place}`}>
                {places.find(({ place }) => place === one.place)?.name ?? one.place}
              </a>
              : {one.words}
            </li>
          ))}
        </ul>
      )}
      <HoursBars places={places} label={answer.sentence} />
      <p class="quiet">
        {text.band(words.temperature(answer.band[0]), words.temperature(answer.band[1]))}
        {heatLimit === null ? '' : ` ${text.limit(words.temperature(heatLimit))}`}
      </p>
      <HoursTable places={places} />
      <h3>{text.gaveTitle}</h3>
      <GaveTable places={places} />
      <details>
        <summary>{text.inWords}</summary>
        {places.map((one) => (
          <div key={one.place} class="place-words">
            <h3>{one.name}</h3>
            {one.words.map((line) => (
              <p key={line}>{line}</p>
            ))}
          </div>
        ))}
      </details>
      <details>
        <summary>{text.pairs}</summary>
        <ul>
          {answer.pairs.map((pair) => (
            <li key={`${pair.from} ${pair.to}`}>{pair.words}</li>
          ))}
        </ul>
      </details>
      <details>
        <summary>{text.saving}</summary>
        <p>{answer.saving}</p>
      </details>
    </section>
  );
}
