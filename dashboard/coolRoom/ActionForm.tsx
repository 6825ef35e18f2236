import { useState } from 'preact/hooks';
import { keptOf } from '../typed.ts';
import { words } from '../words.ts';
import { enterAction } from './commands.ts';
import { Field, FormEnd } from './Field.tsx';
import { byMe, NameField } from './NameField.tsx';
import { useSending } from './useSending.ts';

const EMPTY = { saw: '', did: '', core: '' };

/** What was seen and what was done about it, now. */
export function ActionForm({ room, onStored }: { room: string; onStored: () => void }) {
  const text = words.record;
  const [said, setSaid] = useState(EMPTY);
  const [stored, setStored] = useState('');
  const { sending, failed, send } = useSending();
  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    setStored('');
    const { saw, did, core } = said;
    const done = await send(() =>
      enterAction(room, { saw, did, ...byMe(), core: core === '' ? null : keptOf(core, '°C') }),
    );
    if (!done) return;
    setSaid(EMPTY);
    setStored(text.storedAction);
    onStored();
  };
  const field = (name: keyof typeof EMPTY, label: string) => (
    <Field
      label={label}
      value={said[name]}
      kind={name === 'core' ? 'number' : 'text'}
      required={name !== 'core'}
      onType={(text) => setSaid({ ...said, [name]: text })}
    />
  );
  return (
    <details class="record-form">
      <summary>{text.enterAction}</summary>
      <form class="lot-form" onSubmit={submit} aria-label={text.enterAction}>
        {field('saw', text.saw)}
        {field('did', text.did)}
        {field('core', text.coreReading)}
        <NameField label={text.by} />
        <FormEnd label={text.store} sending={sending} said={failed || stored} />
      </form>
    </details>
  );
}
