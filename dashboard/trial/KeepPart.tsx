import { useState } from 'preact/hooks';
import type { KeptTrial, Trial } from '../../hub/contract/index.ts';
import { ask } from '../ask.ts';
import { refresh } from '../live.ts';
import { useSending } from '../parts/useSending.ts';
import { words } from '../words.ts';

/** What keeping it changes, shown before it is done; it is written down with who, when and why. */
export function KeepPart({ trial, onOver }: { trial: Trial; onOver: (sentence: string) => void }) {
  const text = words.trial;
  const { sending, failed, send } = useSending();
  const [why, setWhy] = useState('');
  const { keeping } = trial;
  if (keeping === null) return null;
  return (
    <form
      class="trial-keep"
      aria-label={text.keepTitle}
      onSubmit={(event) => {
        event.preventDefault();
        void send(async () => {
          await ask<KeptTrial>(`/api/trials/${trial.id}/keep`, why.trim() === '' ? {} : { why });
          onOver(text.kept);
          await refresh();
        });
      }}
    >
      <h3>{text.keepTitle}</h3>
      <p>{text.keepWhat}</p>
      <ul>
        {keeping.changes.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {keeping.fault !== null && <p class="failed">{keeping.fault}</p>}
      <label>
        {text.keepWhy}
        <input maxLength={300} value={why} onInput={(event) => setWhy(event.currentTarget.value)} />
      </label>
      <p class="trial-keep-row">
        <button type="submit" class="main" disabled={sending || keeping.fault !== null}>
          {text.keep}
        </button>
        <button type="button" onClick={() => onOver(text.left)}>
          {text.leave}
        </button>
        <a href="/set-up">{text.changes}</a>
      </p>
      <p role="status" class="failed-line">
        {failed}
      </p>
    </form>
  );
}
