import { useState } from 'preact/hooks';
import { Choice, Field } from '../coolRoom/Field.tsx';
import { today } from '../state.ts';
import { calendarDay, instantAt, minuteOfDay } from '../times.ts';
import { words } from '../words.ts';
import { type Leaf, leavesOf, withLeaf } from './leaves.ts';
import { sendAgain } from './say.ts';
import type { Said } from './waits.ts';

const INSTANT = /^\d{4}-\d\d-\d\dT\d\d:\d\d/;
const DAY = /^\d{4}-\d\d-\d\d$/;
/** Words that people type; other texts are one of a few that a form offers. */
const TYPED = ['note', 'saw', 'did', 'by', 'why', 'variety'];

type Kind = 'number' | 'datetime-local' | 'date' | 'text' | 'place';

function kindOf({ field, value }: Leaf): Kind | null {
  if (!(field in words.queue.fields) || typeof value === 'boolean') return null;
  if (typeof value === 'number') return 'number';
  if (INSTANT.test(value)) return 'datetime-local';
  if (DAY.test(value)) return 'date';
  if (field === 'place') return 'place';
  return TYPED.includes(field) ? 'text' : null;
}

/** An entry that the hub refused, its figures, times and words to be changed. */
export function MendEntry({
  said,
  zone,
  onBack,
}: {
  said: Said;
  zone: string;
  onBack: () => void;
}) {
  const text = words.queue;
  const leaves = leavesOf(said.body).flatMap((leaf) => {
    const kind = kindOf(leaf);
    return kind === null ? [] : [{ leaf, kind }];
  });
  const [typed, setTyped] = useState<readonly string[]>(
    leaves.map(({ leaf, kind }) => shown(leaf.value, kind, zone)),
  );
  const [at, setAt] = useState(local(said.at, zone));
  const type = (i: number, value: string) =>
    setTyped((before) => before.map((one, j) => (j === i ? value : one)));
  const send = (event: SubmitEvent) => {
    event.preventDefault();
    let { body } = said;
    leaves.forEach(({ leaf, kind }, i) => {
      const before = shown(leaf.value, kind, zone);
      const value = typed[i] ?? '';
      // What nobody touched stays to the second.
      if (value !== before) body = withLeaf(body, leaf.where, meant(value, kind, zone));
    });
    sendAgain(said, { body, at: at === local(said.at, zone) ? said.at : instantOf(at, zone) });
  };
  return (
    <form class="mend" onSubmit={send} aria-label={text.actionOn(text.change, said.words)}>
      {leaves.length === 0 && <p>{text.noFields}</p>}
      {leaves.map(({ leaf, kind }, i) => (
        <Line
          key={leaf.where.join('.')}
          field={leaf.field}
          kind={kind}
          value={typed[i] ?? ''}
          onType={(value) => type(i, value)}
        />
      ))}
      <label>
        {text.when}
        <input
          type="datetime-local"
          required
          value={at}
          onInput={(event) => setAt(event.currentTarget.value)}
        />
      </label>
      <div class="waiting-buttons">
        <button type="submit" class="main">
          {text.send}
        </button>
        <button type="button" onClick={onBack}>
          {text.back}
        </button>
      </div>
    </form>
  );
}

function Line({
  field,
  kind,
  value,
  onType,
}: {
  field: string;
  kind: Kind;
  value: string;
  onType: (text: string) => void;
}) {
  const { fields } = words.queue;
  const label = fields[field as keyof typeof fields];
  if (kind === 'place') {
    const places = (today.value?.places ?? []).map(({ id, name }) => [id, name] as const);
    return <Choice label={label} value={value} options={places} onChoose={onType} />;
  }
  if (kind !== 'date')
    return <Field label={label} value={value} kind={kind} required onType={onType} />;
  return (
    <label>
      {label}
      <input
        type="date"
        required
        value={value}
        onInput={(event) => onType(event.currentTarget.value)}
      />
    </label>
  );
}

/** `2026-05-10T09:30` by the farm's clocks. */
const local = (ms: number, zone: string) => {
  const minute = minuteOfDay(ms, zone);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${calendarDay(ms, zone)}T${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
};
const instantOf = (text: string, zone: string) =>
  instantAt(text.slice(0, 10), Number(text.slice(11, 13)) * 60 + Number(text.slice(14, 16)), zone);

const shown = (value: Leaf['value'], kind: Kind, zone: string) =>
  kind === 'datetime-local' ? local(Date.parse(String(value)), zone) : String(value);

function meant(text: string, kind: Kind, zone: string): string | number {
  if (kind === 'number') return Number(text.trim().replace(',', '.').replace('−', '-'));
  if (kind === 'datetime-local') return new Date(instantOf(text, zone)).toISOString();
  return text;
}
