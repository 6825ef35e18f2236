import { useEffect, useRef } from 'preact/hooks';
import { Mark } from '../parts/Mark.tsx';
import { words } from '../words.ts';
import { OthersWait } from './OthersWait.tsx';
import { cameToWait } from './say.ts';
import { WaitingEntry } from './WaitingEntry.tsx';
import { waiting } from './waits.ts';

/** What was said and is not stored yet, and what the hub refused of it; above every page. */
export function WaitingNotice() {
  const text = words.queue;
  const box = useRef<HTMLElement>(null);
  const came = cameToWait.value;
  useEffect(() => {
    // The form has gone with what was said; a keyboard and a voice go on from here.
    if (came > 0) box.current?.focus();
  }, [came]);
  const refused = waiting.value.filter((one) => one.refused !== null);
  const waits = waiting.value.filter((one) => one.refused === null);
  return (
    <>
      <section
        ref={box}
        id="waiting"
        class="waiting"
        aria-label={text.show}
        aria-live="polite"
        tabIndex={-1}
        hidden={waiting.value.length === 0}
      >
        {refused.length > 0 && (
          <>
            <p>
              <Mark shape="care" /> <strong>{text.refusedTitle(refused.length)}.</strong>{' '}
              {text.refusedWhy}
            </p>
            <ul>
              {refused.map((said) => (
                <WaitingEntry key={said.turn} said={said} />
              ))}
            </ul>
          </>
        )}
        {waits.length > 0 && (
          <details open={came > 0}>
            <summary>
              <Mark shape="later" /> <strong>{text.title(waits.length)}.</strong>
            </summary>
            <p class="quiet">{text.why}</p>
            <ol>
              {waits.map((said) => (
                <WaitingEntry key={said.turn} said={said} />
              ))}
            </ol>
          </details>
        )}
      </section>
      <OthersWait />
    </>
  );
}
