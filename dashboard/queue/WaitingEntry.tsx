import { useState } from 'preact/hooks';
import { now } from '../clock.ts';
import { myName } from '../coolRoom/commands.ts';
import { farm } from '../state.ts';
import { when } from '../times.ts';
import { words } from '../words.ts';
import { MendEntry } from './MendEntry.tsx';
import { sendAgain } from './say.ts';
import { dropSaid, type Said } from './waits.ts';

/** One thing that was said: what, when, and what became of it. */
export function WaitingEntry({ said }: { said: Said }) {
  const text = words.queue;
  const [sure, setSure] = useState(false);
  const [mending, setMending] = useState(false);
  const zone = farm.value?.zone;
  const button = (label: string, onClick: () => void, main = false) => (
    <button
      type="button"
      class={main ? 'main' : ''}
      aria-label={text.actionOn(label, said.words)}
      onClick={onClick}
    >
      {label}
    </button>
  );
  return (
    <li>
      <p>
        {said.words}{' '}
        {zone !== undefined && (
          <span class="quiet">
            ({text.saidAt(when(said.at, zone, now.value ?? said.at))}
            {said.refused === null && `, ${text.waits}`})
          </span>
        )}
      </p>
      {said.refused !== null && <p class="failed">{text.refused(said.refused)}</p>}
      {mending && zone !== undefined ? (
        <MendEntry said={said} zone={zone} onBack={() => setMending(false)} />
      ) : (
        <div class="waiting-buttons">
          {said.refused !== null && !sure && (
            <>
              <Anyway said={said} button={button} />
              {button(text.change, () => setMending(true), true)}
              {button(text.again, () => sendAgain(said))}
            </>
          )}
          {sure ? (
            <>
              {button(text.dropSure, () => dropSaid(said))}
              {button(text.keep, () => setSure(false))}
            </>
          ) : (
            button(text.drop, () => setSure(true))
          )}
        </div>
      )}
    </li>
  );
}

/** Where the hub warned, and takes it in spite of that when somebody says so. */
function Anyway({
  said,
  button,
}: {
  said: Said;
  button: (label: string, onClick: () => void) => preact.JSX.Element;
}) {
  const [name, setName] = useState(myName());
  const warned = said.refused?.includes('override.by') ?? false;
  const perhapsSame = said.refused?.startsWith('Expected another loss') ?? false;
  if (!warned && !perhapsSame) return null;
  const by = name.trim();
  const more = warned ? { override: { by } } : { another: true };
  const body = { ...(said.body as object), ...more };
  return (
    <>
      {warned && (
        <label>
          {words.queue.yourName}
          <input
            value={name}
            maxLength={60}
            autocomplete="off"
            onInput={(event) => setName(event.currentTarget.value)}
          />
        </label>
      )}
      {button(words.queue.anyway, () => {
        if (!warned || by !== '') sendAgain(said, { body });
      })}
    </>
  );
}
