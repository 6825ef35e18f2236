import { useEffect, useRef, useState } from 'preact/hooks';
import type { PlannedDelivery } from '../../hub/contract/index.ts';
import { Field } from '../coolRoom/Field.tsx';
import { mayChange } from '../state.ts';
import { keptOf } from '../typed.ts';
import { words } from '../words.ts';
import { useChange } from './useChange.ts';

type Want = PlannedDelivery['wants'][number];
const STEP = 1; // kg, or lb; ours

/** One weight of a delivery, and how to change it for this day: two taps. */
export function WantRow({
  day,
  want,
  onStored,
}: {
  day: string;
  want: Want;
  onStored: (sentence: string) => void;
}) {
  const text = words.planning;
  const { of, name, kg, usual, change } = want;
  const [open, setOpen] = useState(false);
  const [other, setOther] = useState('');
  const toggle = useRef<HTMLButtonElement>(null);
  const choices = useRef<HTMLDivElement>(null);
  const { sending, failed, send } = useChange(onStored);
  useEffect(() => {
    if (open) choices.current?.querySelector('button')?.focus();
  }, [open]);
  const close = () => {
    setOpen(false);
    setOther('');
    toggle.current?.focus();
  };
  const put = async (weight: number) => {
    if (await send({ day, of, kg: weight }, text.stored(name, day, weight))) close();
  };
  const takeBack = async (entry: number) => {
    if (await send({ day, of, undo: entry }, text.takenBack(name, day))) close();
  };
  const typed = keptOf(other, 'kg');
  const submit = (event: SubmitEvent) => {
    event.preventDefault();
    if (typed !== null && typed >= 0) void put(typed);
  };
  const step = keptOf(String(STEP), 'kg') ?? STEP;
  const steps = [0, kg - step, kg + step].filter(
    (one, i, all) => one >= 0 && one !== kg && all.indexOf(one) === i,
  );
  return (
    <li class="want">
      <p>
        <strong>{kg === 0 ? text.none : text.weight(kg)}</strong> {name}
        {change !== null && (
          <span class="quiet">
            {' '}
            ({text.usual(usual)}; {text.by(change.who)})
          </span>
        )}
      </p>
      {mayChange.value && (
        <button
          type="button"
          ref={toggle}
          aria-expanded={open}
          aria-label={text.changeOf(name, day)}
          onClick={() => setOpen(!open)}
        >
          {text.change}
        </button>
      )}
      {open && (
        <div class="want-choices" ref={choices}>
          {steps.map((one) => (
            <button type="button" key={one} aria-disabled={sending} onClick={() => put(one)}>
              {one === 0 ? text.none : text.weight(one)}
            </button>
          ))}
          {change !== null && (
            <button type="button" aria-disabled={sending} onClick={() => takeBack(change.entry)}>
              {text.asUsual(usual)}
            </button>
          )}
          <form onSubmit={submit}>
            <Field label={text.other} value={other} kind="number" required onType={setOther} />
            <button type="submit" class="main" aria-disabled={sending}>
              {sending ? text.sending : text.store}
            </button>
          </form>
          <button type="button" class="plain" onClick={close}>
            {text.leave}
          </button>
        </div>
      )}
      <p role="status" class="failed-line">
        {failed}
      </p>
    </li>
  );
}
