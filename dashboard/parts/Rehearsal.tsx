import { useState } from 'preact/hooks';
import { rehearse } from '../alarmState.ts';
import { words } from '../words.ts';

/** Raises one test alarm that goes the way of a real one. */
export function Rehearsal() {
  const text = words.alarms.sending;
  const [said, setSaid] = useState('');
  const send = async () => {
    try {
      await rehearse();
      setSaid(text.rehearsed);
    } catch (error) {
      setSaid(words.alarms.notDone(error instanceof Error ? error.message : String(error)));
    }
  };
  return (
    <div class="alarm-buttons">
      <button type="button" onClick={send}>
        {text.rehearse}
      </button>
      <p role="status">{said}</p>
    </div>
  );
}
