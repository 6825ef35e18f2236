import { useState } from 'preact/hooks';
import type { Batch, BatchHistory, BatchLook } from '../../hub/contract/index.ts';
import { Field, FormEnd } from '../coolRoom/Field.tsx';
import { useSending } from '../coolRoom/useSending.ts';
import { Mark } from '../parts/Mark.tsx';
import { PhotoPick } from '../photos/PhotoPick.tsx';
import { words } from '../words.ts';
import { changeBatch } from './commands.ts';
import { lookShape } from './lookShape.ts';
import { countOf, TrayCount } from './TrayCount.tsx';

type Props = { batch: Batch; onDone: (sentence: string, batch: BatchHistory) => void };

/** What somebody sees, as words with a shape. */
function Looks({
  looks,
  chosen,
  legend,
  onChoose,
}: {
  looks: readonly BatchLook[];
  chosen: BatchLook | null;
  legend: string;
  onChoose: (look: BatchLook) => void;
}) {
  return (
    <fieldset class="batch-two">
      <legend>{legend}</legend>
      {looks.map((look) => (
        <button
          type="button"
          key={look}
          aria-pressed={look === chosen}
          onClick={() => onChoose(look)}
        >
          <Mark shape={lookShape[look]} /> {words.batches.looks[look]}
        </button>
      ))}
    </fieldset>
  );
}

const LOOKS = Object.keys(lookShape) as BatchLook[];

export function NoteBatch({ batch, onDone }: Props) {
  const text = words.batches;
  const [look, setLook] = useState<BatchLook | null>(null);
  const [note, setNote] = useState('');
  const [photo, setPhoto] = useState<string | null>(null);
  const { sending, failed, send } = useSending();
  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    if (look === null) return;
    const said = { look, note, ...(photo === null ? {} : { photo }) };
    const changed = await send(() => changeBatch(batch.id, { note: said }));
    if (changed) onDone(text.noted(look), changed);
  };
  return (
    <form class="batch-form" onSubmit={submit} aria-label={`${text.note}: ${batch.name}`}>
      <Looks looks={LOOKS} chosen={look} legend={text.noteTitle} onChoose={setLook} />
      <Field label={text.noteMore} value={note} onType={setNote} />
      <PhotoPick had={photo !== null} onSent={setPhoto} />
      {photo !== null && <p role="status">{words.photos.taken}</p>}
      {look !== null && <FormEnd label={text.store} sending={sending} said={failed} />}
    </form>
  );
}

/** Why trays go; nobody throws out what looks well. */
const WHY = LOOKS.filter((look) => look !== 'well' && look !== 'ready');

export function ThrowOutBatch({ batch, onDone }: Props) {
  const text = words.batches;
  const [look, setLook] = useState<BatchLook | null>(null);
  const [trays, setTrays] = useState(String(batch.traysLeft));
  const [note, setNote] = useState('');
  const { sending, failed, send } = useSending();
  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    const count = countOf(trays);
    if (look === null || count === null) return;
    const throwOut = { look, trays: count, note };
    const changed = await send(() => changeBatch(batch.id, { throwOut }));
    if (changed) onDone(text.thrownOut(count, batch.name), changed);
  };
  return (
    <form class="batch-form" onSubmit={submit} aria-label={`${text.throwOut}: ${batch.name}`}>
      <TrayCount label={text.howMany} value={trays} most={batch.traysLeft} onChange={setTrays} />
      <Looks looks={WHY} chosen={look} legend={text.why} onChoose={setLook} />
      <Field label={text.noteMore} value={note} onType={setNote} />
      {look !== null && <FormEnd label={text.throwOut} sending={sending} said={failed} />}
    </form>
  );
}
