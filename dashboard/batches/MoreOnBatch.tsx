import { useState } from 'preact/hooks';
import type { Batch, BatchHistory, BatchWork } from '../../hub/contract/index.ts';
import { Choice, Field, FormEnd } from '../coolRoom/Field.tsx';
import { numberOf, useSending } from '../coolRoom/useSending.ts';
import { words } from '../words.ts';
import { BatchPast } from './BatchPast.tsx';
import { CorrectBatch } from './CorrectBatch.tsx';
import { changeBatch } from './commands.ts';

/** Minutes of work, clearing, correcting, and all that was ever said of it. */
export function MoreOnBatch({
  batch,
  zone,
  now,
  onDone,
}: {
  batch: Batch;
  zone: string;
  now: number;
  onDone: (sentence: string, batch: BatchHistory) => void;
}) {
  const text = words.batches;
  const name = text.name(batch.traysLeft, batch.name, batch.variety);
  const [past, setPast] = useState(false);
  const [wrong, setWrong] = useState(false);
  return (
    <div class="batch-form">
      <Minutes batch={batch} onDone={onDone} />
      {batch.state === 'growing' && <Clear batch={batch} onDone={onDone} />}
      <details onToggle={(event) => setWrong(event.currentTarget.open)}>
        <summary>
          {text.correct}
          <span class="unseen">: {name}</span>
        </summary>
        {wrong && <CorrectBatch batch={batch} zone={zone} onDone={onDone} />}
      </details>
      <details onToggle={(event) => setPast(event.currentTarget.open)}>
        <summary>
          {text.history}
          <span class="unseen">: {name}</span>
        </summary>
        {past && <BatchPast batch={batch} zone={zone} now={now} />}
      </details>
    </div>
  );
}

type Props = { batch: Batch; onDone: (sentence: string, batch: BatchHistory) => void };

function Minutes({ batch, onDone }: Props) {
  const text = words.batches;
  const [work, setWork] = useState<BatchWork>('tending');
  const [minutes, setMinutes] = useState('');
  const { sending, failed, send } = useSending();
  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    const value = numberOf(minutes);
    if (value === null) return;
    const changed = await send(() => changeBatch(batch.id, { work: { work, minutes: value } }));
    if (changed) onDone(text.worked(value), changed);
  };
  return (
    <details>
      <summary>
        {text.work}
        <span class="unseen">: {batch.name}</span>
      </summary>
      <form class="batch-form" onSubmit={submit} aria-label={`${text.work}: ${batch.name}`}>
        <Choice
          label={text.workKind}
          value={work}
          none={text.works.tending}
          options={Object.entries(text.works).filter(([one]) => one !== 'tending')}
          onChoose={(one) => setWork((one || 'tending') as BatchWork)}
        />
        <Field
          label={text.workMinutes}
          value={minutes}
          kind="number"
          required
          onType={setMinutes}
        />
        <FormEnd label={text.store} sending={sending} said={failed} />
      </form>
    </details>
  );
}

function Clear({ batch, onDone }: Props) {
  const text = words.batches;
  const { sending, failed, send } = useSending();
  const clear = async () => {
    const changed = await send(() => changeBatch(batch.id, { clear: {} }));
    if (changed) onDone(text.cleared(batch.name), changed);
  };
  return (
    <p>
      <button type="button" aria-disabled={sending} onClick={clear}>
        {sending ? text.sending : text.clear}
      </button>
      {failed !== '' && <span class="failed-line"> {failed}</span>}
    </p>
  );
}
