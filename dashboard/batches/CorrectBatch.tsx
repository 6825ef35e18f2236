import { useState } from 'preact/hooks';
import type { Batch, BatchHistory, ChangeBatch } from '../../hub/contract/index.ts';
import { FormEnd } from '../coolRoom/Field.tsx';
import { numberOf, useSending } from '../coolRoom/useSending.ts';
import { fromTheWall, onTheWall } from '../onTheWall.ts';
import { words } from '../words.ts';
import { changeBatch } from './commands.ts';
import { SowingFields } from './SowingFields.tsx';
import { countOf, TrayCount } from './TrayCount.tsx';

type Correction = NonNullable<ChangeBatch['correct']>;
const written = (value: number | null) => (value === null ? '' : String(value));

/** What was entered wrong at the sowing, said anew: only what differs is sent. */
export function CorrectBatch({
  batch,
  zone,
  onDone,
}: {
  batch: Batch;
  zone: string;
  onDone: (sentence: string, batch: BatchHistory) => void;
}) {
  const text = words.batches;
  const before = {
    trays: String(batch.trays),
    variety: batch.variety ?? '',
    sownAt: onTheWall(batch.sownAt, zone),
    seedCost: written(batch.seedCost),
    otherCost: written(batch.otherCost),
    meantFor: batch.meantFor ?? '',
  };
  const [said, setSaid] = useState(before);
  const { sending, failed, send } = useSending();
  const put = (field: string) => (value: string) => setSaid({ ...said, [field]: value });
  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    const read: { [Key in keyof typeof said]: () => Correction } = {
      trays: () => ({ trays: countOf(said.trays) ?? batch.trays }),
      variety: () => ({ variety: said.variety.trim() || null }),
      sownAt: () => (said.sownAt === '' ? {} : { sownAt: fromTheWall(said.sownAt, zone) }),
      seedCost: () => ({ seedCost: numberOf(said.seedCost) }),
      otherCost: () => ({ otherCost: numberOf(said.otherCost) }),
      meantFor: () => ({ meantFor: said.meantFor || null }),
    };
    const fields = (Object.keys(said) as (keyof typeof said)[]).filter(
      (field) => said[field] !== before[field],
    );
    const correct: Correction = Object.assign({}, ...fields.map((field) => read[field]()));
    const changed = await send(() => changeBatch(batch.id, { correct }));
    if (changed) onDone(text.corrected, changed);
  };
  return (
    <form class="batch-form" onSubmit={submit} aria-label={`${text.correct}: ${batch.name}`}>
      <TrayCount label={text.howMany} value={said.trays} onChange={put('trays')} />
      <SowingFields said={said} put={put} />
      <FormEnd label={text.store} sending={sending} said={failed} />
    </form>
  );
}
