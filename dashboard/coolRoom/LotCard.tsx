import { useState } from 'preact/hooks';
import type { Lot, LotHistory } from '../../hub/contract/index.ts';
import { Mark, type Shape } from '../parts/Mark.tsx';
import { when } from '../times.ts';
import { words } from '../words.ts';
import { CorrectLot } from './CorrectLot.tsx';
import { LotPast } from './LotPast.tsx';
import { TakeLot } from './TakeLot.tsx';

type Open = 'take' | 'correct' | 'history' | null;

/** One lot: how much, days left in words, since when, and its time over the limit. */
export function LotCard({
  lot,
  crops,
  zone,
  now,
  onChanged,
}: {
  lot: Lot;
  /** Crops by id and name, for a correction. */
  crops: readonly (readonly [string, string])[];
  zone: string;
  now: number;
  onChanged: (sentence: string, lot: LotHistory) => void;
}) {
  const text = words.lots;
  const [open, setOpen] = useState<Open>(null);
  const name = text.name(lot.kgLeft, lot.name);
  const done = (sentence: string, changed: LotHistory) => {
    setOpen(null);
    onChanged(sentence, changed);
  };
  const button = (key: Exclude<Open, null>, label: string) => (
    <button
      type="button"
      aria-expanded={open === key}
      aria-label={`${label}: ${name}`}
      onClick={() => setOpen(open === key ? null : key)}
    >
      {label}
    </button>
  );
  const facts = [
    text.since(when(Date.parse(lot.storedAt), zone, now)),
    lot.harvestedAt !== null
      ? text.harvested(when(Date.parse(lot.harvestedAt), zone, now), lot.fromName)
      : lot.fromName !== null
        ? text.harvestedFrom(lot.fromName)
        : '',
    lot.cooled === null ? '' : text.cooledHow(lot.cooled),
    lot.class === null ? '' : text.classes[lot.class],
    lot.partOf === null ? '' : text.partOf(lot.partOf),
    lot.kgLeft < lot.kg ? text.of(lot.kgLeft, lot.kg) : '',
  ].filter((part) => part !== '');
  return (
    <li class="lot" id={lot.id}>
      <h3>{name}</h3>
      <p class="lot-words">
        <Mark shape={shapeOf(lot)} /> {lot.words}
      </p>
      {lot.slack !== null && <p>{text.slack(lot.slack)}</p>}
      {lot.override && (
        <p class="caution">
          {lot.override.warning}. {text.overrideBy(lot.override.by)}
        </p>
      )}
      {lot.released && <p>{text.releasedBy(lot.released.by)}</p>}
      <p class="quiet">{facts.join(' · ')}</p>
      <details>
        <summary>
          {text.clock}
          <span class="unseen">: {name}</span>
        </summary>
        {lot.clockWords.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </details>
      <div class="lot-buttons">
        {button('take', text.use)}
        {button('correct', text.correct)}
        {button('history', text.history)}
      </div>
      {open === 'take' && <TakeLot lot={lot} onDone={done} />}
      {open === 'correct' && <CorrectLot lot={lot} crops={crops} zone={zone} onDone={done} />}
      {open === 'history' && <LotPast lot={lot} zone={zone} now={now} onDone={done} />}
    </li>
  );
}

/** Beside the words, never instead of them. */
function shapeOf({ slack, life }: Lot): Shape {
  if (life.risk !== null) return 'care';
  if (life.days === null) return 'unknown';
  return slack !== null && slack < 0 ? 'care' : 'later';
}
