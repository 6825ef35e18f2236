import { useState } from 'preact/hooks';
import type { ShownAlarm } from '../../hub/contract/index.ts';
import { seeAlarm } from '../alarmState.ts';
import { waiting } from '../queue/index.ts';
import { words } from '../words.ts';
import { Mark } from './Mark.tsx';

/** "Seen", by one tap; and whether it was right, then or later. */
export function SeenButtons({
  alarm,
  again = () => {},
}: {
  alarm: ShownAlarm;
  again?: () => void;
}) {
  const text = words.alarms;
  const [sending, setSending] = useState(false);
  const [failed, setFailed] = useState('');
  const send = async (was?: 'right' | 'false') => {
    if (sending) return;
    setSending(true);
    setFailed('');
    try {
      await seeAlarm(alarm.id, was);
      again();
      // The button may have gone with its alarm; a keyboard goes on from the page.
      if (document.activeElement === document.body)
        document.getElementById('main')?.focus({ preventScroll: true });
    } catch (error) {
      setFailed(text.notDone(error instanceof Error ? error.message : String(error)));
    } finally {
      setSending(false);
    }
  };
  const button = (label: string, was?: 'right' | 'false', main = false) => (
    <button
      type="button"
      class={main ? 'main' : ''}
      aria-disabled={sending}
      aria-label={text.seenOf(label, alarm.words)}
      onClick={() => send(was)}
    >
      {label}
    </button>
  );
  const open = alarm.seenAt === null;
  const test = alarm.kind === 'test';
  if (!open && (test || alarm.was !== null)) return null;
  const own = `/api/alarms/${encodeURIComponent(alarm.id)}/seen`;
  if (waiting.value.some(({ path, refused }) => refused === null && path === own))
    return (
      <p class="waits-here">
        <Mark shape="later" /> {words.queue.seenWaits}
      </p>
    );
  return (
    <div class="alarm-buttons">
      {open && button(text.seen, undefined, true)}
      {open && !test && button(text.seenFalse, 'false')}
      {!open && button(text.wasRight, 'right')}
      {!open && button(text.wasFalse, 'false')}
      <p role="status" class="failed-line">
        {failed}
      </p>
    </div>
  );
}
