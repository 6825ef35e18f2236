import { useState } from 'preact/hooks';
import { byMe } from '../coolRoom/NameField.tsx';
import { useSending } from '../coolRoom/useSending.ts';
import { who } from '../state.ts';

type Override = { readonly override?: { readonly by: string } };

/** A command that may be warned about: what the warning is, and sending it in spite of that. */
export function useHeeded() {
  const { sending, failed, send } = useSending();
  const [warned, setWarned] = useState('');
  const go = async <Shape>(command: (override: Override) => Promise<Shape>) => {
    const by = byMe().by ?? who.value?.name ?? '';
    const answer = await send(
      () => command(warned === '' ? {} : { override: { by } }),
      ({ status, message }) => {
        // Only a warning asks for a name; any other conflict is told as it is.
        if (status !== 409 || !message.includes('override.by')) return false;
        setWarned(message.slice(message.indexOf(': ') + 2));
        return true;
      },
    );
    if (answer !== undefined) setWarned('');
    return answer;
  };
  return { sending, failed, warned, forget: () => setWarned(''), go };
}
