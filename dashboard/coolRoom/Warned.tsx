import { words } from '../words.ts';
import { myName } from './commands.ts';
import { NameField } from './NameField.tsx';

/** What speaks against it, and whose decision it is to do it all the same; nothing where nothing does. */
export function Warned({ sentence }: { sentence: string }) {
  if (sentence === '') return null;
  return (
    <>
      <p class="caution" role="alert">
        <strong>{words.lots.warned}: </strong>
        {sentence}
      </p>
      <p class="quiet">{words.lots.nameWhy}</p>
      <NameField />
    </>
  );
}

/** The name under which a warning is overridden. */
export const overrideBy = () => ({ override: { by: myName().trim() } });
