import { useState } from 'preact/hooks';
import type { MethodScores, Scorecard } from '../../hub/contract/index.ts';
import { ReliabilityChart } from '../charts/ReliabilityChart.tsx';
import { shortDay } from '../times.ts';
import { words } from '../words.ts';
import { Fault } from './Fault.tsx';
import { FigureTable } from './FigureTable.tsx';
import { useAnswer } from './useAnswer.ts';

/** Every forecast of a night that is over, held against what came. */
export function Scores({ night }: { night: string }) {
  const { answer, fault, again } = useAnswer<Scorecard>('/api/learn/scorecard', night);
  const [chosen, setChosen] = useState(0);
  if (!answer) return <Fault sentence={fault} again={again} />;
  const { spots, sources } = answer;
  const here = spots[Math.min(chosen, spots.length - 1)];
  const pushed = sources.filter(({ place, spot }) => place === here?.place && spot === here?.spot);
  return (
    <>
      {here ? (
        <>
          <label>
            {words.frost.choose}{' '}
            <select
              value={String(chosen)}
              onChange={(event) => setChosen(Number(event.currentTarget.value))}
            >
              {spots.map(({ place, name, spot }, i) => (
                <option key={`${place} ${spot}`} value={String(i)}>
                  {name}, {words.spots[spot]}
                </option>
              ))}
            </select>
          </label>
          {here.methods.map((scores) => (
            <MethodCard key={`${here.place} ${here.spot} ${scores.method}`} scores={scores} />
          ))}
        </>
      ) : (
        <p class="quiet">{words.frost.noScores}</p>
      )}
      <h3>{words.frost.sources}</h3>
      {pushed.length === 0 ? (
        <p class="quiet">{words.frost.noSources}</p>
      ) : (
        <ul class="plain-list">
          {pushed.map((one) => (
            <li key={one.source}>{one.words}</li>
          ))}
        </ul>
      )}
    </>
  );
}

function MethodCard({ scores }: { scores: MethodScores }) {
  const { bandColumns, listColumns } = words.frost;
  return (
    <section>
      <h3>{words.frost.methods[scores.method] ?? scores.method}</h3>
      <ul>
        {scores.words.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {scores.bands.length > 0 && (
        <details>
          <summary>{words.frost.reliability}</summary>
          <ReliabilityChart bands={scores.bands} />
          <p class="quiet">{words.frost.bandKey}</p>
          <FigureTable
            label={words.frost.reliability}
            columns={Object.values(bandColumns)}
            rows={scores.bands.map(({ from, to, n, happened, between }) => [
              words.frost.band(from, to),
              String(n),
              String(happened),
              n === 0 ? words.places.dash : words.withUnit((100 * happened) / n, '%', 0),
              between
                ? `${words.number(100 * between[0], 0)} … ${words.number(100 * between[1], 0)}`
                : words.places.dash,
            ])}
          />
        </details>
      )}
      <details>
        <summary>{words.frost.list}</summary>
        <FigureTable
          label={words.frost.list}
          columns={Object.values(listColumns)}
          rows={scores.list.map(({ night, mean, p, low, below }) => [
            shortDay(night),
            words.degrees(mean),
            words.chance(p),
            words.degrees(low),
            below ? words.frost.yes : words.frost.no,
          ])}
        />
      </details>
    </section>
  );
}
