import { useState } from 'preact/hooks';
import { useSending } from '../parts/useSending.ts';
import { farm } from '../state.ts';
import { dayName, timeOfDay } from '../times.ts';
import { words } from '../words.ts';
import { changes, type Description, undoChange } from './description.ts';

/** Who changed what when, the newest first, each to be put back. */
export function Changes({ now }: { now: Description }) {
  const text = words.setUpSteps;
  const { failed, send } = useSending();
  const [said, setSaid] = useState('');
  const zone = farm.value?.zone ?? 'UTC';
  return (
    <>
      <p class="quiet">{text.changesWhy}</p>
      <p role="status">{said}</p>
      <p role="status" class="failed-line">
        {failed}
      </p>
      {changes.value.length === 0 && <p>{text.none}</p>}
      <ol class="people-list">
        {changes.value.map((change) => {
          const at = Date.parse(change.t);
          const by = text.by(change.who, `${dayName(at, zone)} ${timeOfDay(at, zone)}`);
          return (
            <li key={change.id}>
              <p class="quiet">{by}</p>
              {change.undoes !== null && <p>{text.undoes}</p>}
              <ul>
                {change.words.map((line) => (
                  <li key={line}>{line}</li>
                ))}
              </ul>
              {change.why !== null && <p class="quiet">{change.why}</p>}
              {change.undoable && (
                <button
                  type="button"
                  aria-label={text.forName(text.undo, `${by}: ${change.words[0] ?? ''}`)}
                  onClick={() =>
                    send(async () => {
                      await undoChange(change.id, now.version);
                      setSaid(text.undone);
                    })
                  }
                >
                  {text.undo}
                </button>
              )}
            </li>
          );
        })}
      </ol>
    </>
  );
}
