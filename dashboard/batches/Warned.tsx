import { NameField } from '../coolRoom/NameField.tsx';
import { words } from '../words.ts';

/** What speaks against it, and who decides. */
export function Warned({ sentence }: { sentence: string }) {
  if (sentence === '') return null;
  const text = words.batches;
  return (
    <>
      <p class="caution" role="alert">
        <strong>{text.warned}: </strong>
        {sentence}
      </p>
      <p class="quiet">{text.nameWhy}</p>
      <NameField />
    </>
  );
}
