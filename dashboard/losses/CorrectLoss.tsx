import { useState } from 'preact/hooks';
import type {
  ChangeLoss,
  Loss,
  LossHistory,
  LossLook,
  LossUnit,
} from '../../hub/contract/index.ts';
import { Field, FormEnd } from '../coolRoom/Field.tsx';
import { numberOf, useSending } from '../coolRoom/useSending.ts';
import { keptOf, typedOf } from '../typed.ts';
import { words } from '../words.ts';
import { changeLoss } from './commands.ts';

const writtenIn = (amount: number, unit: LossUnit) =>
  unit === 'kg' ? typedOf(amount, 'kg') : String(amount);
const readIn = (text: string, unit: LossUnit) =>
  unit === 'kg' ? keptOf(text, 'kg') : numberOf(text);

/** What was entered wrong, said anew: only what differs is sent. */
export function CorrectLoss({
  loss,
  today,
  onDone,
}: {
  loss: Loss;
  today: string;
  onDone: (loss: LossHistory) => void;
}) {
  const text = words.losses;
  const before = {
    ...{
      amount: writtenIn(loss.amount, loss.unit),
      unit: loss.unit,
      look: loss.look ?? ('other' as LossLook),
    },
    ...{ day: loss.day, note: loss.note ?? '', batch: loss.batch ?? '' },
    of: loss.of === null ? '' : writtenIn(loss.of.amount, loss.of.unit),
    ofUnit: loss.of?.unit ?? ('kg' as 'kg' | 'trays'),
  };
  const [said, setSaid] = useState(before);
  const [why, setWhy] = useState('');
  const { sending, failed, send } = useSending();
  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    const amount = readIn(said.amount, said.unit);
    const of = readIn(said.of, said.ofUnit);
    const differs = (...keys: (keyof typeof before)[]) =>
      keys.some((key) => said[key] !== before[key]);
    const correct: ChangeLoss['correct'] = {
      ...(differs('amount', 'unit') && amount !== null ? { amount } : {}),
      ...(differs('unit') ? { unit: said.unit } : {}),
      ...(differs('of', 'ofUnit')
        ? { of: of === null ? null : { amount: of, unit: said.ofUnit } }
        : {}),
      ...(differs('look') ? { look: said.look } : {}),
      ...(differs('day') ? { day: said.day } : {}),
      ...(differs('batch') ? { batch: said.batch.trim() || null } : {}),
      ...(differs('note') ? { note: said.note.trim() || null } : {}),
    };
    const changed = await send(() =>
      changeLoss(loss.id, { correct, ...(why.trim() === '' ? {} : { why: why.trim() }) }),
    );
    if (changed) onDone(changed);
  };
  const choose = <Key extends keyof typeof before>(
    key: Key,
    label: string,
    options: readonly (readonly [(typeof before)[Key] & string, string])[],
  ) => (
    <label>
      {label}
      <select
        value={said[key]}
        onChange={(event) => setSaid({ ...said, [key]: event.currentTarget.value })}
      >
        {options.map(([value, name]) => (
          <option key={value} value={value}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
  const units = Object.entries(text.units) as [LossUnit, string][];
  return (
    <form class="lot-form" onSubmit={submit} aria-label={`${text.correct}: ${loss.words}`}>
      <div class="loss-pair">
        <Field
          label={text.amount}
          kind="number"
          required
          value={said.amount}
          onType={(amount) => setSaid({ ...said, amount })}
        />
        {choose('unit', text.unit, units)}
      </div>
      <div class="loss-pair">
        <Field
          label={text.ofAmount}
          kind="number"
          value={said.of}
          onType={(of) => setSaid({ ...said, of })}
        />
        {choose('ofUnit', text.unit, [
          ['kg', text.units.kg],
          ['trays', text.units.trays],
        ])}
      </div>
      {choose('look', text.lookedWhat, Object.entries(text.looks) as [LossLook, string][])}
      <label>
        {text.whenSeen}
        <input
          type="date"
          required
          max={today}
          value={said.day}
          onInput={(event) => setSaid({ ...said, day: event.currentTarget.value })}
        />
      </label>
      <Field
        label={text.batch}
        longest={60}
        value={said.batch}
        onType={(batch) => setSaid({ ...said, batch })}
      />
      <Field label={text.note} value={said.note} onType={(note) => setSaid({ ...said, note })} />
      <Field label={text.why} value={why} onType={setWhy} />
      <FormEnd label={text.store} sending={sending} said={failed} />
    </form>
  );
}
