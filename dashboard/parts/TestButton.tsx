import { useState } from 'preact/hooks';
import { testChannel } from '../alarmState.ts';
import { words } from '../words.ts';

/** Sends one test to one person now, and shows what the other side said. */
export function TestButton({
  person,
  name,
  channel,
}: {
  person: string;
  name: string;
  channel: 'email' | 'webhook';
}) {
  const text = words.alarms.people;
  const [trying, setTrying] = useState(false);
  const [said, setSaid] = useState('');
  const send = async () => {
    if (trying) return;
    setTrying(true);
    setSaid('');
    try {
      const { outcome, words: answer } = await testChannel(person, channel);
      setSaid(text.outcome(text.outcomes[outcome], answer));
    } catch (error) {
      setSaid(words.alarms.notDone(error instanceof Error ? error.message : String(error)));
    } finally {
      setTrying(false);
    }
  };
  return (
    <div>
      <button
        type="button"
        aria-label={text.testOf(channel, name)}
        aria-disabled={trying}
        onClick={send}
      >
        {trying ? text.testing : text.test(channel)}
      </button>
      <p role="status" class="failed-line">
        {said}
      </p>
    </div>
  );
}
