import { useState } from 'preact/hooks';
import type { Batch, BatchCourse, BatchHistory, BatchOffers } from '../../hub/contract/index.ts';
import { Mark } from '../parts/Mark.tsx';
import { dayName, shortDay } from '../times.ts';
import { words } from '../words.ts';
import { CutBatch } from './CutBatch.tsx';
import { lookShape } from './lookShape.ts';
import { MoreOnBatch } from './MoreOnBatch.tsx';
import { MoveBatch } from './MoveBatch.tsx';
import { NoteBatch, ThrowOutBatch } from './NoteBatch.tsx';
import { ReadyWhen } from './ReadyWhen.tsx';
import { StayStrip } from './StayStrip.tsx';

type Open = 'move' | 'cut' | 'note' | 'throwOut' | 'moreOn' | null;

/** One batch: what it is, how old, where it stood, how it is, and what may be done with it. */
export function BatchCard({
  batch,
  offers,
  course,
  zone,
  now,
  onChanged,
}: {
  batch: Batch;
  offers: BatchOffers | null;
  /** When it is ready; null until that is known. */
  course: BatchCourse | null;
  zone: string;
  now: number;
  onChanged: (sentence: string, batch: BatchHistory) => void;
}) {
  const text = words.batches;
  const [open, setOpen] = useState<Open>(null);
  const growing = batch.state === 'growing';
  const name = text.name(growing ? batch.traysLeft : batch.trays, batch.name, batch.variety);
  const sown = dayName(Date.parse(batch.sownAt), zone);
  const days = growing ? (now - Date.parse(batch.sownAt)) / 86_400_000 : batch.days;
  const done = (sentence: string, changed: BatchHistory) => {
    setOpen(null);
    onChanged(sentence, changed);
  };
  const button = (key: Exclude<Open, null>) => (
    <button
      type="button"
      aria-expanded={open === key}
      aria-label={`${text[key]}: ${name}`}
      onClick={() => setOpen(open === key ? null : key)}
    >
      {text[key]}
    </button>
  );
  const facts = [
    growing ? text.sown(days, sown) : text.grew(days, sown),
    batch.meantFor === null ? '' : text.meantFor(shortDay(batch.meantFor)),
    batch.partOf === null ? '' : text.partOf(batch.partOf),
  ].filter((part) => part !== '');
  const last = batch.notes.at(-1);
  const form = { batch, onDone: done };
  return (
    <li class="batch" id={batch.id}>
      <h4>{name}</h4>
      <p class="quiet">
        {facts.join(' · ')} · <span class="batch-id">{batch.id}</span>
      </p>
      <p>
        <Mark shape={last ? lookShape[last.look] : growing ? 'later' : 'done'} /> {batch.words}
        {last?.note && ` ${text.quoted(last.note)}`}
      </p>
      <StayStrip batch={batch} now={now} />
      {batch.cuts.length > 0 && (
        <ul class="plain-list quiet">
          {batch.cuts.map((cut) => (
            <li key={cut.entry}>
              {dayName(Date.parse(cut.at), zone)}:{' '}
              {text.cutLine(cut.kg, cut.trays, cut.kg / cut.trays)}
            </li>
          ))}
        </ul>
      )}
      {growing && course && <ReadyWhen course={course} />}
      <div class="batch-buttons">
        {growing && (
          <>
            {button('move')}
            {button('cut')}
          </>
        )}
        {button('note')}
        {growing && button('throwOut')}
        {button('moreOn')}
      </div>
      {open === 'move' && <MoveBatch {...form} places={offers?.places ?? []} />}
      {open === 'cut' && (
        <CutBatch {...form} offer={offers?.crops.find(({ crop }) => crop === batch.crop)} />
      )}
      {open === 'note' && <NoteBatch {...form} />}
      {open === 'throwOut' && <ThrowOutBatch {...form} />}
      {open === 'moreOn' && <MoreOnBatch {...form} zone={zone} now={now} />}
    </li>
  );
}
