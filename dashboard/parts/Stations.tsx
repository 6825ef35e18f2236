import { useState } from 'preact/hooks';
import type { Station } from '../../hub/contract/index.ts';
import { ask } from '../ask.ts';
import { words } from '../words.ts';
import { Fault } from './Fault.tsx';
import { useAnswer } from './useAnswer.ts';

/** Stations whose past was taken in; any can be removed, after being asked once. */
export function Stations({ onChange }: { onChange: () => void }) {
  const text = words.season;
  const { answer, fault, again } = useAnswer<readonly Station[]>('/api/stations');
  const [asked, setAsked] = useState('');
  const [failed, setFailed] = useState('');
  const remove = async (id: string) => {
    setFailed('');
    try {
      await ask(`/api/stations/${encodeURIComponent(id)}`, undefined, 'DELETE');
      setAsked('');
      again();
      onChange();
    } catch (error) {
      setFailed(words.state.failed(error instanceof Error ? error.message : String(error)));
    }
  };
  return (
    <details class="stations">
      <summary>{text.stations}</summary>
      {answer === null && <Fault sentence={fault} again={again} />}
      {answer?.length === 0 && <p>{text.noStations}</p>}
      <ul class="plain-list">
        {answer?.map(({ id, name, distance, first, last, days }) => (
          <li key={id}>
            <p>{text.station(name, distance, first, last, days)}</p>
            {asked === id ? (
              <p>
                {text.sure(name)}{' '}
                <button type="button" onClick={() => remove(id)}>
                  {text.yes}
                </button>{' '}
                <button type="button" onClick={() => setAsked('')}>
                  {text.keep}
                </button>
              </p>
            ) : (
              <button type="button" aria-label={text.removeOf(name)} onClick={() => setAsked(id)}>
                {text.remove}
              </button>
            )}
          </li>
        ))}
      </ul>
      <p role="status" class="failed-line">
        {failed}
      </p>
      <p class="quiet">
        {text.howTo} <code>{text.command}</code> {text.commandOnly}
      </p>
    </details>
  );
}
