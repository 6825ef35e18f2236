import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { FarmPreview } from '../../hub/contract/index.ts';
import { Refusal } from '../ask.ts';
import { words } from '../words.ts';
import {
  changeFarm,
  type Draft,
  described,
  previewFarm,
  refreshDescription,
  stored,
} from './description.ts';

const SETTLE = 400; // ms without a keystroke; ours

/**
 * A part of the description: while something is typed the hub says what it would change and what is
 * wrong with it; then it is stored.
 *
 * @param next the whole description as it would be; null while there is nothing to try.
 */
export function ChangeForm({
  next,
  children,
  onStored = () => {},
}: {
  next: Draft | null;
  children: ComponentChildren;
  onStored?: () => void;
}) {
  const text = words.setUpSteps;
  const [seen, setSeen] = useState<FarmPreview | null>(null);
  const [sending, setSending] = useState(false);
  const [said, setSaid] = useState('');
  const [overtaken, setOvertaken] = useState(false);
  const newest = useRef('');
  const asked = next === null ? '' : JSON.stringify(next);
  newest.current = asked;
  useEffect(() => {
    if (asked === '') return setSeen(null);
    const timer = setTimeout(() => {
      previewFarm(JSON.parse(asked)).then(
        (found) => newest.current === asked && setSeen(found),
        () => {}, // storing it says what is wrong
      );
    }, SETTLE);
    return () => clearTimeout(timer);
  }, [asked]);
  const send = async (event: SubmitEvent) => {
    event.preventDefault();
    const based = described.value?.version;
    if (sending || next === null || based === undefined) return;
    setSending(true);
    setSaid('');
    try {
      await changeFarm(based, next);
      stored.value = text.stored;
      setOvertaken(false);
      setSeen(null);
      onStored();
    } catch (error) {
      setOvertaken(error instanceof Refusal && error.status === 409);
      setSaid(text.notStored(error instanceof Error ? error.message : String(error)));
    } finally {
      setSending(false);
    }
  };
  return (
    <form class="sign-in set-up-form" onSubmit={send} autocomplete="off">
      {children}
      <div class="would-change" aria-live="polite">
        {seen !== null && seen.faults.length > 0 && (
          <ul class="failed-line">
            {seen.faults.map(({ field, sentence }) => (
              <li key={field + sentence}>{sentence}</li>
            ))}
          </ul>
        )}
        {seen !== null && seen.faults.length === 0 && (
          <>
            <p class="quiet">{seen.changes.length === 0 ? text.nothing : text.preview}</p>
            <ul>
              {seen.changes.map((line) => (
                <li key={line}>{line}</li>
              ))}
              {seen.lost.map((line) => (
                <li key={`lost ${line}`}>{text.lost(line)}</li>
              ))}
            </ul>
          </>
        )}
      </div>
      <button type="submit" class="main" aria-disabled={sending || next === null}>
        {sending ? text.storing : text.store}
      </button>
      <p role="status">{said}</p>
      {overtaken && (
        <button type="button" onClick={refreshDescription}>
          {text.lookAgain}
        </button>
      )}
    </form>
  );
}
