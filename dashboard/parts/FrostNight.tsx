import { useState } from 'preact/hooks';
import type { FrostTonight } from '../../hub/contract/index.ts';
import { FrostChart } from '../charts/FrostChart.tsx';
import { today } from '../state.ts';
import { words } from '../words.ts';
import { Fault } from './Fault.tsx';
import { FrostTable } from './FrostTable.tsx';
import { useAnswer } from './useAnswer.ts';

const ALL = 'all';

/** Tonight: the picture, the same in words and in figures, and what is covered now. */
export function FrostNight({ zone }: { zone: string }) {
  const { answer, fault, again } = useAnswer<FrostTonight>(
    '/api/frost/curves',
    today.value?.asOf ?? '',
  );
  const [chosen, setChosen] = useState('0');
  if (!answer) return <Fault sentence={fault} again={again} />;
  const { curves, covers, night } = answer;
  if (curves.length === 0) {
    return <p class="quiet">{night === null ? words.frost.noNight : words.frost.none}</p>;
  }
  const index = chosen === ALL ? null : Math.min(Number(chosen), curves.length - 1);
  return (
    <>
      {fault !== undefined && <Fault sentence={fault} again={again} />}
      <label>
        {words.frost.range}{' '}
        <select value={chosen} onChange={(event) => setChosen(event.currentTarget.value)}>
          {curves.map(({ place, spot, name }, i) => (
            <option key={`${place} ${spot}`} value={String(i)}>
              {i + 1} {name}, {words.spots[spot]}
            </option>
          ))}
          <option value={ALL}>{words.frost.all}</option>
        </select>
      </label>
      <FrostChart tonight={answer} zone={zone} shown={index} />
      <p class="quiet">{words.frost.key}</p>
      <ol class="frost-words" id="frost-words">
        {curves.map((curve) => (
          <li key={`${curve.place} ${curve.spot}`}>{curve.words}</li>
        ))}
      </ol>
      <FrostTable tonight={answer} zone={zone} />
      <h3>{words.frost.covers}</h3>
      {covers.length === 0 ? (
        <p class="quiet">{words.frost.noCovers}</p>
      ) : (
        <ul class="plain-list">
          {covers.map((cover) => (
            <li key={cover.place}>{cover.words}</li>
          ))}
        </ul>
      )}
    </>
  );
}
