import { useState } from 'preact/hooks';
import type { CalendarFeed } from '../../hub/contract/index.ts';
import { useFacts } from '../coolRoom/useFacts.ts';
import { Fault } from '../parts/Fault.tsx';
import { words } from '../words.ts';
import { setCalendar } from './commands.ts';

/** The secret address at which a calendar program reads the plan; shown once, to be copied. */
export function CalendarPart() {
  const text = words.planning.calendar;
  const { facts, fault, again } = useFacts<CalendarFeed>('/api/calendar');
  const [made, setMade] = useState<CalendarFeed | null>(null);
  const [said, setSaid] = useState('');
  const [sending, setSending] = useState(false);
  const shown = made ?? facts;
  const set = async (to: 'renew' | 'stop') => {
    if (sending) return;
    setSending(true);
    setSaid('');
    try {
      setMade(await setCalendar(to));
    } catch (error) {
      setSaid(words.planning.notStored(error instanceof Error ? error.message : String(error)));
    } finally {
      setSending(false);
    }
  };
  const address = made?.path == null ? null : `${location.origin}${made.path}`;
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(address ?? '');
      setSaid(text.copied);
    } catch {
      setSaid(text.notCopied); // without TLS browsers allow it only on the machine itself
    }
  };
  return (
    <section class="calendar-part">
      <h2>{text.title}</h2>
      {shown === null ? (
        <Fault sentence={fault} again={again} />
      ) : (
        <>
          <p>{shown.words}</p>
          {address !== null && (
            <>
              <label>
                {text.address}
                <input
                  type="text"
                  readOnly
                  value={address}
                  onFocus={(event) => event.currentTarget.select()}
                />
              </label>
              <p>{text.once}</p>
            </>
          )}
          <div class="plan-buttons">
            {address !== null && (
              <button type="button" class="main" onClick={copy}>
                {text.copy}
              </button>
            )}
            <button type="button" aria-disabled={sending} onClick={() => set('renew')}>
              {shown.open ? text.renew : text.make}
            </button>
            {shown.open && (
              <button type="button" aria-disabled={sending} onClick={() => set('stop')}>
                {text.stop}
              </button>
            )}
          </div>
          {shown.open && <p class="quiet">{text.renewWhy}</p>}
          <p>
            <a class="plan-link" href="/api/calendar.ics" download>
              {text.file}
            </a>
          </p>
          <p role="status">{said}</p>
        </>
      )}
    </section>
  );
}
